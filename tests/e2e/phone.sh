#!/bin/sh
# Every page on a phone over ssh: 40 columns, 16 rows, an xterm, and no key that its
# keyboard lacks (tests/command/phone_test has the keys).
. tests/e2e/lib.sh

leads_on() {
	screen | sed '/^ *$/d' | tail -n 1 | grep -q '? keys *$'
}

has_no_stranger() {
	! screen | grep -q '\^\[\|too small'
}

# page 'WHAT' 'TITLE' KEYS ...: from Today by those keys, then back by Esc.
page() {
	what=$1 title=$2
	shift 2
	keys "$@"
	check "$what comes up" wait_for 10 shows "^ $title"
	check "$what: its key line says where the keys are" wait_for 10 leads_on
	check "$what: nothing is torn" has_no_stranger
	keys '?'
	check "$what tells its keys" wait_for 10 shows '^ Keys'
	check "... to the last one" has_no_stranger
	keys Escape
	wait_for 10 shows "^ $title"
	for step in 1 2 3 4; do
		shows '^ mothtally  ' && break
		keys Escape
		wait_for 2 settled
	done
	check "$what: Esc leads back to Today" wait_for 10 shows '^ mothtally  '
}

start 40x16 "TERM=xterm $prog demo"
wait_for 20 shows '^ mothtally  '
page Week Week w
page Why '.*trap 1' w Down Down Enter
page Run Run Enter
page Alerts Alerts a
page Picks Picks k
page Treatments Treatments k t
page Service Service s
page Flight Flight f
page 'Hot spots' Hot h
page 'the map' Hot h m
page 'the numbers' Hot h Enter
page 'a diary' '.*trap 1 ' w Down Down d
page Book Book b
# The book's list of lists stays where it was.
page 'a list' Traps b Down Down Enter
page 'a form' Form b Enter Enter
page Thresholds Thresholds b Down Down Down Down Enter
page Weather Weather m
page Settings Settings b Down Down Down Down Down Down Down Enter
page Backups Backups b Down Down Enter
page Merging Merging b Down Enter

start 40x16 "TERM=xterm $prog --book '$work/new.db'"
check "Start comes up" wait_for 20 shows 'Type in your first'
check "Start: its key line says where the keys are" wait_for 10 leads_on

finish
