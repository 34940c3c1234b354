# Seats, as demonstrations name them
seat-driver = Driver
seat-passenger = Front passenger
seat-dinette-1 = Dinette, faces forward, first
seat-dinette-2 = Dinette, faces forward, second
seat-dinette-3 = Dinette, faces the rear, first
seat-dinette-4 = Dinette, faces the rear, second
seat-sofa = Sofa
seat-rear-1 = Rear seat, first
seat-rear-2 = Rear seat, second
