# Emptying the tanks with two grey tanks
demo-dump-order-two-order = There are three handles: black, grey 2 for the kitchen, grey 1 for the shower. In which order do you open and close them?
demo-dump-order-two-card-open-black = Open black
demo-dump-order-two-card-close-black = Close black
demo-dump-order-two-card-open-two = Open grey 2 (kitchen)
demo-dump-order-two-card-close-two = Close grey 2 (kitchen)
demo-dump-order-two-card-open-one = Open grey 1 (shower)
demo-dump-order-two-card-close-one = Close grey 1 (shower)
demo-dump-order-two-card-leave-open = Leave one grey valve open for the stay
demo-dump-order-two-say-shut = Keep it shut. You need that water to rinse the hose. An open valve lets smell and insects in.
demo-dump-order-two-say-black-first = Black goes first. The grey water then rinses the hose clean.
demo-dump-order-two-say-one-at-a-time = One at a time. First close the valve that is open.
demo-dump-order-two-say-kitchen-first = Kitchen water is greasy. Let the soapy shower water go last, so that it washes the hose.
demo-dump-order-two-say-look-again = You can only close a valve that is open.
