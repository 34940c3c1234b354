# Seats, as demonstrations and lists name them
seat-driver = Driver
seat-passenger = Front passenger
seat-dinette-1 = Forward-facing dinette seat at the window
seat-dinette-2 = Forward-facing dinette seat at the aisle
seat-dinette-3 = Rear-facing dinette seat at the window
seat-dinette-4 = Rear-facing dinette seat at the aisle
seat-sofa = Sofa
seat-rear-1 = Rear seat at the window
seat-rear-2 = Rear seat at the aisle
