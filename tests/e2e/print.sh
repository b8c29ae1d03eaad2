#!/bin/sh
# The grower prints from the first page: a printer that takes it, one that refuses, one
# that thinks it over, and none.
. tests/e2e/lib.sh

mkdir "$work/printer" "$work/empty" "$work/here"
cat >"$work/printer/lp" <<'LP'
#!/bin/sh
echo "$*" >>"$LP/words"
(: </dev/tty) 2>/dev/null && echo 'a terminal' >>"$LP/words"
cat >"$LP/data"
while [ -e "$LP/wait" ]; do sleep 0.05; done
if [ -e "$LP/refuse" ]; then
	echo 'lp: Error - no default destination available.' >&2
	exit 1
fi
echo 'request id is Barn-7 (1 file(s))'
LP
chmod +x "$work/printer/lp"

# $1 the size, $2 what stands before the program
open_demo() {
	rm -rf "$work/lp"
	mkdir "$work/lp"
	start "$1" "cd $work/here && $2 LP=$work/lp $prog demo"
	wait_for 20 shows 'To run'
}

has_data() {
	test -s "$work/lp/data"
}

open_demo 80x24 "PATH=$work/printer:\$PATH"
keys p
check "p asks first" wait_for 10 shows 'Enter prints the weekly sheet of Drumsorrel'
keys Escape
check "Esc leaves it" wait_for 10 shows 'Left as it was'
check "and nothing went to lp" test ! -e "$work/lp/words"
keys p Enter
check "the job that lp made is told" wait_for 10 shows 'request id is Barn-7'
check "lp got the sheet by its name" grep -q '^-t Scouting sheet: ' "$work/lp/words"
check "and no terminal to ask for a password on" sh -c "! grep -q terminal '$work/lp/words'"
if command -v pdftotext >/dev/null && head -c 4 "$work/lp/data" | grep -q PDF; then
	pdftotext -layout "$work/lp/data" "$work/text"
	check "it is a PDF with the picked farm" grep -q 'Scouting sheet: Drumsorrel' "$work/text"
	check "which says that it is invented" grep -q 'demo: invented data' "$work/text"
	keys P Enter
	check "the sheet to carry goes too" wait_for 10 sh -c "[ \$(wc -l <'$work/lp/words') -eq 2 ]"
	wait_for 10 shows 'request id is Barn-7'
	pdftotext -layout "$work/lp/data" "$work/text"
	check "with nothing counted in it" grep -q 'Scouting sheet to carry: Drumsorrel' "$work/text"
else
	echo "left out: what the PDF says, as there is no pdftotext or no PDF"
fi
check "nothing was written beside it" test -z "$(ls "$work/here")"

keys f
wait_for 10 shows '^ Flight'
keys s Enter
check "the season page goes from the Flight page" \
	wait_for 10 grep -q '^-t Season page: Drumsorrel' "$work/lp/words"
check "and what lp made of it is told" wait_for 10 shows 'has the season page: request id'
keys y s Enter
check "so does the season before" \
	wait_for 10 sh -c "[ \$(grep -c 'Season page' '$work/lp/words') -eq 2 ]"
wait_for 10 shows 'has the season page: request id'
keys Escape
wait_for 10 shows 'To run'
touch "$work/lp/wait"
keys p Enter
check "a slow lp is told of" wait_for 10 shows 'on its way to the printer'
keys w
check "and keeps nobody waiting" wait_for 10 shows '^ Week'
keys Escape
wait_for 10 shows 'To run'
keys p Enter
check "a second sheet waits for the first" wait_for 10 shows 'has not taken the page before'
keys Down w
wait_for 10 shows '^ Week'
rm "$work/lp/wait"
check "on whatever page, it is told at last" wait_for 10 shows 'request id is Barn-7'
keys Escape q

open_demo 80x24 "PATH=$work/printer:\$PATH"
touch "$work/lp/refuse"
keys p Enter
check "what lp complains of is told" wait_for 10 shows 'not printed (lp: Error - no default'
check "and where the sheet is instead" shows 'sheet-Drumsorrel-2026-07-21\.'
check "it is there" test -s "$work"/here/sheet-Drumsorrel-2026-07-21.*
keys f
wait_for 10 shows '^ Flight'
keys y
wait_for 10 shows 'season 2025'
keys s Enter
check "the season page is in a file too" wait_for 10 shows 'season-Drumsorrel-2025\.'
check "it is there as well" test -s "$work"/here/season-Drumsorrel-2025.*
keys Escape q

open_demo 80x24 "PATH=$work/printer:\$PATH MOTHTALLY_SETTINGS=paper=letter"
keys p Enter
wait_for 10 shows 'request id is Barn-7'
if command -v pdfinfo >/dev/null && head -c 4 "$work/lp/data" | grep -q PDF; then
	check "on the paper that the settings name" \
		sh -c "pdfinfo '$work/lp/data' | grep -q 'letter'"
fi
keys q

# Without any font there is no PDF, but there is a sheet.
cat >"$work/no-fonts.conf" <<'CONF'
<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig></fontconfig>
CONF
open_demo 80x24 "PATH=$work/printer:\$PATH FONTCONFIG_FILE=$work/no-fonts.conf"
keys p Enter
check "a machine without fonts prints text" wait_for 10 shows 'request id is Barn-7'
check "which is the sheet" grep -q '^Scouting sheet: Drumsorrel' "$work/lp/data"
check "and nothing is written across the page" shows '^ mothtally '
keys q

# A printer that never answers does not hold the program.
open_demo 80x24 "PATH=$work/printer:\$PATH"
touch "$work/lp/wait"
keys p Enter
wait_for 10 has_data
keys q
check "the pages end while lp is at work" wait_for 10 shows '^\$ *$'
rm "$work/lp/wait"

open_demo 40x16 "PATH=$work/empty"
keys P Enter
check "no lp: the phone's screen says where it is" wait_for 10 shows 'carry-Drumsorrel-2026-07-21\.'
check "and so it is" test -s "$work"/here/carry-Drumsorrel-2026-07-21.*
keys q

finish
