# over: i18n/english/kite.ftl
# expect: words.language 1:1

kite = x
