# Pets and smoking
topic-pets-smoking = Pets and smoking
why-pets-smoking = The next renter may have an allergy. A smell takes days to clear.
step-pets-smoking = Pets and smoking
show-pets-smoking-agreed = Say whether a pet is on the agreement. A pet costs { $fees_pet }.
show-pets-smoking-none = Say that no pet rides in this unit. Only a service animal may come.
show-pets-smoking-belted = On the road an animal is belted, or in a crate.
show-pets-smoking-smoke = Say what is not allowed inside: smoking, vaping, candles.
know-pets-smoking-smoke = Do not smoke, vape or light candles inside.
know-pets-smoking-agreed = Bring a pet only if it is on your agreement.
know-pets-smoking-none = Bring no pet. If you have a service animal, tell us before you leave.
know-pets-smoking-heat = Never leave an animal alone in the heat.

caution-pets-smoking-1 = A candle or a cigarette can burn the unit down.
    .title = Candles and smoking
    .harm = The fire can kill people inside.
    .avoid = Smoke only outside. Use no candles.
caution-pets-smoking-2 = Smoke or a hidden pet leaves a smell that stays.
    .title = Smoke or a hidden pet
    .harm = Smoke costs { $fees_smoke }. A hidden pet costs { $fees_pet_hidden }.
    .avoid = Smoke only outside. Tell us of every animal before you leave.

question-pets-smoking-1 = What about a service animal?
    .answer = It may come, with no fee. Please tell us.
