#!/bin/sh
# What keeps catalogues whole: the two scripts that lint asks find what was planted.
. tests/e2e/lib.sh

if ! command -v msgen >/dev/null; then
	echo "left out: no gettext on this machine"
	finish
fi
export CATALOGUES="$work/locale"
mkdir "$CATALOGUES"
po=$CATALOGUES/xx.po

begin() {
	printf 'msgid ""\nmsgstr ""\n"Language: xx\\n"\n%s\\n"\n%s\\n"\n' \
		'"Content-Type: text/plain; charset=UTF-8' \
		'"Plural-Forms: nplurals=2; plural=(n != 1);' >"$po"
	sh tests/catalogue update xx
}

catalogue_is_good() {
	sh tests/catalogue check xx >"$work/out" 2>&1
}

# refused PATTERN: the catalogue is, for a reason that the pattern fits
refused() {
	! catalogue_is_good && grep -q -- "$1" "$work/out" && return
	cat "$work/out"
	return 1
}

# A catalogue that says everything as the source does.
begin
check "an empty catalogue is refused" refused 'not translated'
msgen --no-wrap -o "$work/whole.po" "$po" && sed '/^"X-/d' "$work/whole.po" >"$po"
sh tests/catalogue update xx
check "a whole one is good" catalogue_is_good
cp "$po" "$work/whole.po"

# planted WHAT PATTERN SCRIPT: the catalogue after that script of sed is refused.
planted() {
	sed "$3" "$work/whole.po" >"$po"
	check "$1 is refused" refused "$2"
}

planted "a sentence without its translation" 'not translated' \
	's/^msgstr "nothing"$/msgstr ""/'
planted "a pest of the shipped tables without one" '  codling moth"\|"codling moth"' \
	's/^msgstr "codling moth"$/msgstr ""/'
planted "a guess" 'fuzzy' 's/^msgid "nothing"$/#, fuzzy\n&/'
planted "a sentence that left the source" 'no longer\|not up to date' \
	'$a\\nmsgid "zz no such sentence"\nmsgstr "zz"'
planted "a lost value" 'format spec' \
	's|^msgstr "card %s"$|msgstr "card"|'
planted "an entry taken out" 'not up to date' '/^msgid "nothing"$/,/^$/d'

# found TEXT: the checker of sentences names it.
found() {
	printf '%s\n' "$1" >"$work/planted.c"
	! sh tests/lint-words "$work/planted.c" >"$work/out"
}

fine() {
	! found "$1"
}

check "a sentence outside _() is found" found 'tell("the trap is gone");'
check "in two pieces" found 'tell("the " "trap");'
check "after a comment" found '/* _( */ tell("no trap");'
check "beside one that is inside" found 'tell(_("no trap"), "a trap");'
check "in a table" found 'const char *const w[] = { N_("a trap"), "two traps" };'
check "inside is fine" fine 'tell(_("the trap " "is gone"));'
check "with a plural too" fine 'tell(ngettext("one trap", "%d traps", n));'
check "with a context too" fine 'tell(C_("verb", "trap it"));'
check "a quote within a text does not end it" fine 'tell(_("the \"trap\" is (gone"), 1);'
check "a comment is none" fine '/* tell("the trap is gone"); */'
check "a word is none" fine 'tell("trap"); tell("%s %d");'
check "a line to type is none" fine 'tell("mothtally week --pest CM");'

finish
