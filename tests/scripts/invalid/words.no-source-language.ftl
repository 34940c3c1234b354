# drop: i18n/en-US/
# expect: words.no-source-language 1:1
