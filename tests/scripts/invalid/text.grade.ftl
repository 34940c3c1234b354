# swap: know-kite-hold = Two hands hold it.
# for:  know-kite-hold = Independently certified individuals invariably recommend precautionary bilateral manipulation.
# expect: text.grade @know-kite-wind
