# Entry door and steps
topic-entry-door-steps = Entry door and steps
why-entry-door-steps = Falls at the step hurt more renters than anything else. A step left out hits curbs and people.

step-entry-door-steps = Entry door and steps
show-entry-door-steps-catch = Open the door to the hold-back catch. Let the renter do it.
show-entry-door-steps-door-sliding = Slide the door open until its latch holds it. Let the renter do it. Show the bumper step.
show-entry-door-steps-step-electric = The step comes out with the door and folds when the door closes. Show its switch.
show-entry-door-steps-step-fold = Unfold the step and set both feet on the ground. Then fold it and latch it.
show-entry-door-steps-handle = Hold the grab handle and go down facing the unit.
show-entry-door-steps-look-back = Look back at the step before driving.
know-entry-door-steps-handle = Hold the handle and face the unit when you go up or down.
know-entry-door-steps-limit = The step holds { $step_limit }.
know-entry-door-steps-step-in = Check that the step is in before you drive.

caution-entry-door-steps-1 = { $step_kind ->
        [fixed] A wet step can make you slip.
       *[other] A wet or moving step can make you fall.
    }
    .title = A fall at the step
    .harm = You can sprain an ankle.
    .avoid = { $step_kind ->
        [electric] Wait until it stops. Hold the handle and face the unit.
       *[other] Hold the handle and face the unit.
    }
caution-entry-door-steps-2 = { $door_kind ->
        [sliding] A door that slides shut can pinch fingers.
       *[other] A door that the wind slams can pinch fingers.
    }
    .title = Fingers in the door
    .harm = It can bruise or cut them.
    .avoid = Latch the door open. Keep hands off the frame.
caution-entry-door-steps-3 = A step left out can hit a person or a curb.
    .title = Step left out
    .harm = It can hurt someone badly, and it bends.
    .avoid = Check that it is in before each drive.

question-entry-door-steps-1 = { $step_kind ->
        [fixed] { "" }
       *[other] Can the step stay out at night?
    }
    .answer = { $step_kind ->
        [electric] Yes. Its switch holds it out.
       *[other] Yes.
    }
question-entry-door-steps-2 = { $door_kind ->
        [sliding] { "" }
       *[other] Why won't the door close?
    }
    .answer = The deadbolt is out. Turn it back first.
