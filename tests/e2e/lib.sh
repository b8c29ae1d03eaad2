# Drives the real program in a private terminal. Sourced by the scripts beside it, which
# run from the top of the source tree and end with `finish`.
#
#   start 80x24 "$prog demo"         a new terminal of that size; bash -i runs it
#   keys 1 2 Enter C-z               keys by tmux's names; text TEXT types letters
#   resize 30x4                      gives the terminal another size
#   wait_for 10 shows 'PATTERN'      polls until it is true, at most so many seconds
#   check "what holds" COMMAND ...   counts; a failed one prints the screen
#   same_screen FILE                 the whole screen is that of tests/e2e/FILE, soon;
#                                    UPDATE=1 writes the file instead
#   cursor                           prints column,row, from 0,0

prog=${MOTHTALLY:-$PWD/build/mothtally}
here=$PWD/tests/e2e
work=$(mktemp -d)
passed=0 failed=0
terminal=0
shell_pid=

export HOME="$work/home" TZ=UTC LC_ALL=C.UTF-8 TERM=xterm SHELL=/bin/bash PS1='$ '
export ASAN_OPTIONS="detect_leaks=0:log_path=$work/sanitizer"
export UBSAN_OPTIONS="print_stacktrace=1:log_path=$work/sanitizer"
unset XDG_DATA_HOME XDG_CONFIG_HOME MOTHTALLY_BOOK NO_COLOR ESCDELAY LINES COLUMNS TMUX \
	PROMPT_COMMAND HISTFILE
mkdir "$HOME"

# No test reaches a printer.
mkdir "$work/no-printer"
printf '#!/bin/sh\necho "lp: no printer in the tests" >&2\nexit 1\n' >"$work/no-printer/lp"
chmod +x "$work/no-printer/lp"
PATH=$work/no-printer:$PATH

tmux() {
	command tmux -S "$work/tmux$terminal" -f /dev/null "$@"
}

# True if nothing runs in this session; what has ended and waits for init is nothing.
no_process() {
	! ps -o stat= -s "$1" | grep -qv '^Z'
}

# Closes the terminal; what ran in it must end by that.
stop() {
	[ "$shell_pid" ] || return 0
	tmux kill-server 2>/dev/null
	if ! wait_for 20 no_process "$shell_pid"; then
		echo "FAILED: still running after the terminal closed:"
		ps -o pid=,args= -s "$shell_pid"
		kill -9 $(ps -o pid= -s "$shell_pid")
		failed=$((failed + 1))
	fi
	shell_pid=
}

trap 'stop; rm -rf "$work"' EXIT
trap 'exit 1' HUP INT TERM

resize() {
	tmux resize-window -x "${1%x*}" -y "${1#*x}"
}

# A bare chroot has no pseudo-terminals; the rest of a script is left out there.
no_terminal() {
	if [ -e /dev/pts/ptmx ]; then
		echo "FAILED: no terminal could be opened"
		failed=$((failed + 1))
	else
		echo "left out from here: this machine has no /dev/pts, so no terminals"
	fi
	finish
}

start() {
	stop
	terminal=$((terminal + 1))
	tmux new-session -d -x "${1%x*}" -y "${1#*x}" bash --norc --noprofile -i \; \
		set -g status off \; set -g window-size manual \; \
		set -g remain-on-exit on \; set -s escape-time 0 || no_terminal
	resize "$1"
	shell_pid=$(tmux display-message -p '#{pane_pid}')
	wait_for 20 shows '^\$'
	text "clear; $2"
	keys Enter
}

keys() {
	tmux send-keys -- "$@"
}

text() {
	tmux send-keys -l -- "$1"
}

screen() {
	tmux capture-pane -p
}

# With the attributes, as escape sequences.
inks() {
	tmux capture-pane -pe
}

shows() {
	screen | grep -q -- "$1"
}

lacks() {
	! shows "$1"
}

cursor() {
	tmux display-message -p '#{cursor_x},#{cursor_y}'
}

cursor_is() {
	[ "$(cursor)" = "$1" ]
}

wait_for() {
	deadline=$(($(date +%s) + $1))
	shift
	until "$@"; do
		[ "$(date +%s)" -le "$deadline" ] || return 1
		sleep 0.05
	done
}

check() {
	what=$1
	shift
	if "$@"; then
		passed=$((passed + 1))
		return
	fi
	failed=$((failed + 1))
	echo "FAILED: $what"
	[ -z "$shell_pid" ] || screen | sed 's/^/  |/'
}

is_screen() {
	screen | cmp -s - "$here/$1"
}

settled() {
	screen >"$work/before"
	sleep 0.3
	screen | cmp -s - "$work/before"
}

same_screen() {
	if [ "${UPDATE:-}" ]; then
		wait_for 10 settled && screen >"$here/$1"
		return
	fi
	wait_for 10 is_screen "$1" && return
	screen | diff "$here/$1" -
	return 1
}

# The sanitizers write to a file: the terminal would hide it.
no_sanitizer_report() {
	for report in "$work"/sanitizer*; do
		[ ! -e "$report" ] || {
			echo "FAILED: a sanitizer reports:"
			cat "$report"
			return 1
		}
	done
}

finish() {
	stop
	no_sanitizer_report || failed=$((failed + 1))
	echo "$passed passed, $failed failed"
	[ "$failed" -eq 0 ]
	exit
}
