# What is lent
topic-loaned-kit = What we lend you
step-loaned-kit = What we lend you
why-loaned-kit = A thing that is not counted now is charged to the next renter.
show-loaned-kit-count = Count the items together, tag by tag.
show-loaned-kit-tag = Show the tag on each item.
show-loaned-kit-price = Read the price of anything that is costly.
know-loaned-kit-back = Everything on this list comes back with the unit.
know-loaned-kit-price = Each thing that is lost costs the price shown here.
