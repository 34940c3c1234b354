# The renter's pages: one caution a page, or the milder ones of a step together.
caution-page-of = { $page } of { $pages }
caution-page-for-renter = This page is for you. Please read it yourself.
caution-page-what = WHAT IS DANGEROUS
caution-page-mind = WHAT TO MIND
caution-page-harm = WHAT IT DOES
caution-page-avoid = WHAT TO DO
caution-page-small-print = The maker's manual and local rules come first.
caution-page-shared = Please read
caution-page-more-below = There is more below. Please read to the end.
caution-page-larger = Larger text
caution-page-smaller = Smaller text
# The name of the language itself, on the chip that changes to it.
caution-page-language = English

# Who answers.
caution-page-who = WHO ANSWERS
caution-page-who-first = Tap your name first
caution-page-each-driver = EACH DRIVER ANSWERS
caution-page-answered = { $name }: answered
caution-page-away = { $name }: not here

# Answers.
caution-page-hold = Press and hold
caution-page-hold-line = until the ring closes. It says: I have read this.
caution-page-longer = A little longer
caution-page-longer-line = Keep pressing until the ring closes
caution-page-taps = Two taps will do
caution-page-tap-first = Tap circle one.
caution-page-tap-second = Now tap circle two.
caution-page-read = I have read this
caution-page-read-all = I have read all of this
caution-page-saving = Saving

# A question.
caution-page-question = I have a question
caution-page-question-title = Ask it now
caution-page-question-why = The agent answers before you go on. The record says that you asked.
caution-page-question-field = Your question, in a few words if you like
caution-page-question-answered = It was answered
caution-page-question-open = Not answered yet
caution-page-question-back = Back to the page

# A refusal: the renter's part.
caution-page-refuse = I will not confirm this
caution-page-refuse-title = You need not confirm this
caution-page-refuse-which = Which one will you not confirm?
caution-page-refuse-why = Please say why in a few words. Your words stand in the record. Then the agent decides.
caution-page-refuse-field = Why, { $name }?
caution-page-refuse-give = Give the tablet to the agent
caution-page-refuse-back = Back to the page

# A refusal: the agent's part.
caution-page-decide = You decide, as the agent
caution-page-decide-what = { $name } will not confirm: { $title }
caution-page-decide-reason = Reason: { $reason }
caution-page-hand-over = Hand over all the same
caution-page-hand-over-line = The refusal and your decision stand first in the record.
caution-page-keep = Keep the unit here
caution-page-keep-line = The unit does not go out unless this changes.

# The tablet changes hands.
caution-page-thanks = Thank you.
caution-page-give-back = Please give the tablet back to the agent.
caution-page-still-away = Still to answer when they are here: { $names }.
caution-page-still-kept = The unit is to stay here. The closing shows what can be done.
caution-page-go-on = I am the agent. Go on
