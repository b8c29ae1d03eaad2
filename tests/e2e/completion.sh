#!/bin/sh
# What bash and zsh complete after `mothtally`, in the shells themselves.
. tests/e2e/lib.sh

scripts=$work/completion
mkdir -p "$scripts" "$work/here"
for shell in bash zsh; do
	check "completion $shell prints" \
		eval '"$prog" completion '$shell' >"$scripts/'$shell'"'
done
check "another shell is refused" eval '! "$prog" completion dash 2>"$work/out"'
check "and the sentence names those that it knows" grep -q 'bash or zsh' "$work/out"
cp "$scripts/zsh" "$scripts/_mothtally"
cat >"$scripts/zshrc" <<'END'
PS1='$ '; fpath=("$scripts" $fpath); autoload -U compinit; compinit -u -D
zstyle ':completion:*' list-prompt ''; unsetopt beep
END
touch "$work/here/visits of july.csv" "$work/here/traps.csv"

# The names stand in the complaint about one that is none.
has_all_commands() {
	for command in $("$prog" nothing 2>&1 | sed 's/.*there are //; s/,//g'); do
		grep -q "'') _mothtally_words '.*\\<$command\\>" "$scripts/$1" || return 1
	done
}

# completes WHAT TYPED SHOWN: Tab after the one makes the line show the other.
completes() {
	text "$2"
	keys Tab
	check "$shell: $1" wait_for 10 shows "$3"
	keys C-c
	text clear
	keys Enter
	wait_for 10 lacks mothtally
}

try() {
	completes "a command" 'mothtally hots' 'mothtally hotspots'
	completes "one behind the book" 'mothtally --book x.db deg' 'x.db degree-days'
	completes "an option" 'mothtally week --cs' 'mothtally week --csv'
	completes "a word that follows an option" 'mothtally sheet --paper l' '--paper letter'
	completes "a kind" 'mothtally import thr' 'import thresholds'
	completes "a format" 'mothtally import ghcn-d' 'import ghcn-dly'
	completes "a file" 'mothtally import traps tr' 'import traps traps.csv'
	completes "a file with blanks" 'mothtally import visits vi' 'visits\\ of\\ july.csv'
	completes "the book's file" 'mothtally --book tra' '--book traps.csv'
	completes "an option after a file" 'mothtally import thresholds traps.csv --rep' \
		'traps.csv --replace'
}

for shell in bash zsh; do
	if ! command -v $shell >/dev/null; then
		echo "left out: no $shell on this machine"
		continue
	fi
	check "$shell is told of every command" has_all_commands $shell
	check "$shell reads it without a complaint" $shell -n "$scripts/$shell"
done

shell=bash
start 80x24 ". '$scripts/bash'; cd '$work/here'; clear"
wait_for 10 lacks scripts
try

shell=zsh
if command -v zsh >/dev/null; then
	start 80x24 "cd '$work/here'; scripts='$scripts' exec zsh -f"
	wait_for 10 lacks exec
	text ". '$scripts/zshrc'; clear"
	keys Enter
	wait_for 20 lacks zshrc
	try
fi

finish
