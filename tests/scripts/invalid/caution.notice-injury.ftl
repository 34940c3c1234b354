# swap: .harm = The cloth is lost.
# for:  .harm = The cloth is lost, and the pole can hurt you.
# expect: caution.notice-injury 1:2
