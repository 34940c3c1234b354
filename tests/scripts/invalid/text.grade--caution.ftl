# swap: .avoid = Take it down in time.
# for:  .avoid = Immediately discontinue recreational operations whenever meteorological conditions deteriorate.
# expect: text.grade @caution-kite-2
