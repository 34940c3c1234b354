# The renter's pages: one caution a page, or the milder ones of a step together.
caution-page-of = Caution { $first } of { $all }
caution-page-of-several = Cautions { $first } to { $last } of { $all }
caution-page-for = This page is for { $name }.
caution-page-for-first = This page is for { $name }. Please read it yourself.
caution-page-what = WHAT IS DANGEROUS
caution-page-mind = WHAT TO MIND
caution-page-harm = WHAT IT DOES
caution-page-avoid = WHAT TO DO
caution-page-small-print = The maker's manual and local rules come first.
caution-page-more-below = There is more below. Please read to the end.
caution-page-larger = Larger text
caution-page-smaller = Smaller text
# The name of the language itself, on the chip that changes to it.
caution-page-language = English

# Who answers.
caution-page-who = WHO ANSWERS
caution-page-each-driver = EACH DRIVER ANSWERS
caution-page-answered = { $name }: answered
caution-page-later = { $name }: after you
caution-page-away = { $name }: not here
caution-page-not-me = I am not { $name }

# The card between two people.
caution-page-turn-now = NOW
caution-page-turn-pass = Please pass the tablet to { $name }.
caution-page-turn-for = These pages are for { $name }.
caution-page-turn-count =
    { $count ->
        [one] One caution is for { $name }.
       *[other] { $count } cautions are for { $name }.
    }
caution-page-turn-on = Please pass the tablet on.
caution-page-turn-next = Who reads next?
caution-page-turn-who = Who reads these pages?
caution-page-turn-first = Tap your own name.
caution-page-turn-each = Tap your own name. Some pages come once for each driver.
caution-page-turn-take = I am { $name }
caution-page-turn-agent = Give the tablet to the agent

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

# A refusal, in three steps: the renter's reason, the agent's decision, what was saved.
caution-page-refuse = I will not confirm this
caution-page-refuse-step = STEP { $step } OF 3: { $who }
caution-page-refuse-title = You need not confirm this
caution-page-refuse-why = Please say why. Next, the agent decides whether the unit goes out.
caution-page-refuse-which = Which one will you not confirm?
caution-page-refuse-reason = Why?
caution-page-refuse-unclear = I do not understand it.
caution-page-refuse-disagree = I do not agree with it.
caution-page-refuse-cannot = I cannot do what it asks.
caution-page-refuse-field = Or in your own words
caution-page-refuse-give = Give the tablet to the agent
caution-page-refuse-back = Back to the page
caution-page-refuse-agent = the agent
caution-page-refuse-both = agent and renter
caution-page-decide = Does the unit go out?
caution-page-decide-what = { $name } will not confirm: { $title }
caution-page-decide-reason = Reason: { $reason }
caution-page-hand-over = Hand over all the same
caution-page-hand-over-line = The refusal and your decision stand first in the record.
caution-page-keep = Keep the unit here
caution-page-keep-line = The unit does not go out unless this changes.
caution-page-decide-hold = Save, as the agent
caution-page-decide-hold-line = Hold until the ring closes.
caution-page-saved = Saved
caution-page-saved-decision = Decision of the agent: { $decision }
caution-page-saved-hand-over = Refusal and decision stand first in the record.
caution-page-saved-keep = Refusal and decision are in the record. The unit does not go out unless this changes.
caution-page-saved-more = Next: { $name } reads on. Please give the tablet back.
caution-page-saved-end = Next: this stop is done.
caution-page-saved-on = Go on

# The tablet changes hands.
caution-page-thanks = Thank you.
caution-page-give-back = Please give the tablet back to the agent.
caution-page-still-away = Still to answer: { $names }.
caution-page-still-kept = The unit is to stay here. The closing shows what can be done.
caution-page-for-agent = FOR THE AGENT
caution-page-go-on = I have the tablet again
caution-page-go-on-line = Agent, hold until the ring closes.
