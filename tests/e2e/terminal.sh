#!/bin/sh
# The program and its terminal: start and end, stop and go on, sizes, signals, kinds of
# terminals. Nothing here depends on what a page says beyond its last line.
. tests/e2e/lib.sh

page_is_up() {
	shows 'q quit'
}

program() {
	ps -o pid= --ppid "$shell_pid"
}

send() {
	kill -s "$1" $(program)
}

# The cursor is where the picked line begins.
cursor_on_picked() {
	row=$(cursor)
	row=${row#*,}
	screen | sed -n "$((row + 1))p" | grep -q '>'
}

moved_from() {
	[ "$(cursor)" != "$1" ]
}

ascii_only() {
	! screen | LC_ALL=C grep -q '[^ -~]'
}

colourless() {
	! inks | grep -q '\[[0-9;]*[39][0-7]m'
}

reverse_somewhere() {
	inks | grep -q '\[[0-9;]*7[;m]'
}

modes_are_back() {
	text 'stty -a'
	keys Enter
	wait_for 10 shows '[^-]icanon' && shows '[^-]echo ' && shows '[^-]icrnl'
}

hang_up() {
	tmux kill-server
	wait_for 20 no_process "$shell_pid"
}

$prog </dev/null >"$work/out" 2>"$work/err"
check "without a terminal the pages are refused" [ $? -eq 2 ]
check "in a sentence" grep -q 'need a terminal' "$work/err"
check "and nothing on stdout" [ ! -s "$work/out" ]

start 80x24 "$prog demo"
check "the pages open" wait_for 20 page_is_up
check "the cursor is on the picked line" wait_for 10 cursor_on_picked
was=$(cursor)
keys Down
check "an arrow moves it" wait_for 10 moved_from "$was"
keys Up
check "and back" wait_for 10 cursor_is "$was"

keys C-z
check "Ctrl-Z stops it and gives the terminal back" wait_for 10 shows Stopped
keys fg Enter
check "fg brings the page back" wait_for 10 page_is_up
check "with the same line picked" wait_for 10 cursor_is "$was"
keys Down
check "the first arrow key after fg is an arrow key" wait_for 10 moved_from "$was"
keys Up
wait_for 10 cursor_is "$was"
send STOP
check "a stop from outside" wait_for 10 shows Stopped
keys fg Enter
check "fg after a stop from outside" wait_for 10 page_is_up
keys Down
check "the arrow keys still work" wait_for 10 moved_from "$was"

for size in 40x16 30x4 2x2 1x1 200x60; do
	resize "$size"
	wait_for 10 settled
	check "lives at $size" [ "$(program)" ]
done
resize 80x24
check "back at 80x24 the page is whole" wait_for 10 page_is_up
check "and the cursor on the picked line" wait_for 10 cursor_on_picked

keys q
text 'echo ended with $?'
keys Enter
check "q ends it" wait_for 10 shows 'ended with 0'
check "and the terminal is as before" modes_are_back

for signal in TERM HUP INT; do
	start 80x24 "$prog demo; echo ended with \$?"
	wait_for 20 page_is_up
	send $signal
	check "SIG$signal ends it in order" wait_for 10 shows 'ended with 0'
	check "SIG$signal leaves the terminal as before" modes_are_back
done

start 80x24 "$prog demo"
wait_for 20 page_is_up
check "it ends when its terminal is gone" hang_up

start 80x24 "TERM=vt100 $prog demo"
check "vt100: the page comes up" wait_for 20 page_is_up
check "vt100: ASCII only" ascii_only
check "vt100: what is picked is reverse" reverse_somewhere
check "vt100: no colour" colourless
was=$(cursor)
keys Down
check "vt100: the arrow keys work" wait_for 10 moved_from "$was"

start 80x24 "LC_ALL=C $prog demo"
check "LC_ALL=C: the page comes up" wait_for 20 page_is_up
check "LC_ALL=C: ASCII only" ascii_only

start 80x24 "$prog demo"
wait_for 20 page_is_up
check "colour is used where there is some" eval '! colourless'
start 80x24 "NO_COLOR=1 $prog demo"
wait_for 20 page_is_up
check "NO_COLOR: no colour" colourless
check "NO_COLOR: what is picked is reverse" reverse_somewhere

for kind in no-such-terminal dumb ''; do
	start 80x24 "TERM=$kind $prog demo; echo ended with \$?"
	check "TERM=$kind: refused" wait_for 10 shows 'ended with 2'
	check "TERM=$kind: with a word on TERM" shows 'TERM'
done

finish
