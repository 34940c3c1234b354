# What to do at a smell of gas
demo-gas-smell-order = You smell gas inside. Put the steps in order. Some cards must not be used.
demo-gas-smell-card-no-sparks = No switches, no flames, no phone inside
demo-gas-smell-card-out = Everyone out, door left open
demo-gas-smell-card-valve = Close the valve, if you can reach it safely
demo-gas-smell-card-away = Go { $limit_gas_away } away, against the wind and uphill
demo-gas-smell-card-call = Call { $phone_emergency }, then { $phone_road }
demo-gas-smell-card-stay-out = Nobody goes back in until trained staff say so
demo-gas-smell-card-fan = Switch on the fan
demo-gas-smell-card-lighter = Look for the leak with a lighter
demo-gas-smell-card-bags = Go back in for the bags
demo-gas-smell-say-fan = A fan switch can spark. Leave the door open instead.
demo-gas-smell-say-lighter = A flame sets off the gas. Trained staff look for the leak, never you.
demo-gas-smell-say-bags = Nothing in there is worth your life.
demo-gas-smell-say-phone = A phone can spark. Get out, then call.
demo-gas-smell-say-far-first = Get far away first. Then call.
demo-gas-smell-say-people-first = People first. Get everyone out, then close the valve.
demo-gas-smell-say-look-again = Think of what must be done before this.
