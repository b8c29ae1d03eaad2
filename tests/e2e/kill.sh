#!/bin/sh
# Killed at 200 random moments of a run, its terminal closed at 200, a disk that takes no
# more: what the screen showed as saved is in the book, once and as it was typed. SEED
# picks the moments, KILLS=1000 how many kills and KILLS_ALONE=1 leaves the rest out. Under
# the sanitizers, which are slow, it is a part of them.
. tests/e2e/lib.sh
. tests/e2e/farm

most=200 hangups=200 seed=${SEED:-20260721}
if [ "${SANITIZED:-}" ]; then most=60 hangups=20; fi
kills=${KILLS:-$most}
base="$work/base.db" book="$work/book.db" pid=
make_farm "$base"

i=0
while [ $i -lt 40 ]; do
	i=$((i + 1))
	echo "$i $(count_of $i)"
done >"$work/run"

# Runs the program in the terminal; once it is gone the title says so, behind all that
# it wrote, and the screen stays as it was.
cat >"$work/pane" <<END
exec 2>"$work/pane.err"
ulimit -S -f \${1:-unlimited}
printf '\\033]2;on\\007'
sh -c 'echo \$\$ >"$work/pid"; exec $prog --book "$book" --today $day'
printf '\\033]2;gone\\007'
read -r never
END

# begin [LIMIT]: the limit is that of a file's size, in blocks of 512 bytes
begin() {
	rm -f "$work/pid"
	tmux respawn-pane -k "sh $work/pane ${1:-}"
	shell_pid=$(tmux display-message -p '#{pane_pid}')
	wait_for 60 test -s "$work/pid"
	pid=$(cat "$work/pid")
}

# As wait_for, but soon: this is done some hundred times.
quick() {
	tries=0
	until "$@"; do
		tries=$((tries + 1))
		[ $tries -lt 1000 ] || return 1
		sleep 0.01
	done
}

gone() {
	[ "$(tmux display-message -p '#{pane_title}')" = gone ]
}

# The counts of the run from the first open trap on, all at once.
type_run() {
	tmux send-keys -l -- "$(awk -v n="$1" 'BEGIN { printf "\r" }
		NR > n { printf "%s\r", $2 }' "$work/run")"
}

# What a screen shows as saved: TRAP COUNT, and last how many are said to be done. The
# count of today is the fifth after the pest: a frame cut off half-way may have the heads
# of one width over the rows of another.
shown() {
	awk '
		/ trap .* today / { on = 1 }
		on && /^   [0-9]+ / {
			for (k = 2; k < NF && $k != "CM" && $k != "OFM"; k++)
				;
			if ($(k + 5) ~ /^[0-9]+$/)
				print $1, $(k + 5)
		}
		$2 == "of" && $4 == "done" { print "done", $1 }' "$1"
}

sound() {
	$prog --book "$book" --today $day check >"$work/check" 2>&1
}

# The book holds the first n counts of the run and nothing else, at least those shown;
# each was entered once, and the book is sound.
held() {
	sound || {
		cat "$work/check"
		return 1
	}
	saved "$book" >"$work/saved"
	n=$(($(wc -l <"$work/saved")))
	head -n "$n" "$work/run" | cmp - "$work/saved" || return 1
	shown "$1" >"$work/shown"
	awk -v n="$n" -v saved="$work/saved" '
		FILENAME == saved { in_book[$1] = $2; next }
		$1 == "done" ? $2 > n : in_book[$1] != $2 { print "lost: " $0; bad = 1 }
		END { exit bad }' "$work/saved" "$work/shown" || return 1
	[ "$n" = "$(sqlite3 "$book" "SELECT count(*) FROM history WHERE op = 'insert'
		AND kind = 'visit' AND day = '$day'")" ]
}

# Takes up the run where the book has it; a fresh book when it is through.
run_on() {
	[ "$n" -lt 40 ] || { cp "$base" "$book"; n=0; }
	begin
	quick shows 'q quit'
	type_run "$n"
}

# after MOMENT: says what was lost; n is then how many the book has
after() {
	if held "$work/screen"; then
		survived=$((survived + 1))
	else
		echo "not held at $1:"
		sed 's/^/  |/' "$work/screen"
		n=$(($(saved "$book" | wc -l)))
	fi
	seen=$((seen + $(wc -l <"$work/shown")))
}

# moments SALT HOW_MANY: parts of the longest time, one a line
moments() {
	awk -v seed="$seed$1" -v n="$2" 'BEGIN {
		srand(seed)
		for (i = 1; i <= n; i++)
			printf "%.4f\n", rand()
	}'
}

portion() {
	awk -v a="$1" -v b="$2" 'BEGIN { printf "%.3f\n", a * b }'
}

# Sets longest, the seconds of a run: from its first key until it is done, and not less
# than on a machine that is quick.
time_run() {
	cp "$base" "$book"
	begin
	wait_for 60 shows 'q quit'
	from=$(date +%s.%N)
	type_run 0
	wait_for 60 shows '^ 40 of 40 done'
	longest=$(awk -v from="$from" -v to="$(date +%s.%N)" 'BEGIN {
		t = to - from
		print (t < 0.12 ? 0.12 : t > 2 ? 2 : t)
	}')
	kill -9 "$pid"
	wait_for 60 gone
}

# A machine that has become slower shows less by the moment: they all come later then.
# SEEN and KILLS so far.
keep_up() {
	[ "$1" -lt $(($2 * 6)) ] || return 0
	longest=$(awk -v t="$longest" 'BEGIN { t *= 1.25; print (t > 3 ? 3 : t) }')
}

killed() {
	sleep "$1"
	kill -9 "$pid"
	quick gone
	screen >"$work/screen"
}

closed() {
	sleep "$1"
	screen >"$work/screen"
	tmux respawn-pane -k true
	wait_for 60 no_process "$shell_pid" || {
		echo "still running after its terminal was closed"
		kill -9 "$pid"
	}
}

start 80x24 true
time_run
cp "$base" "$book"
n=0 survived=0 seen=0 tried=0
for part in $(moments 1 $((kills - kills / 10))); do
	moment=$(portion "$part" "$longest")
	run_on
	killed "$moment"
	after "a kill after $moment s of the run"
	tried=$((tried + 1))
	keep_up $seen $tried
done
check "there was something to see" [ $seen -gt $((tried * 4)) ]
for part in $(moments 2 $((kills / 10))); do
	moment=$(portion "$part" 0.04)
	begin
	killed "$moment"
	after "a kill after $moment s of the program"
done
echo "$kills kills, $survived held"
check "after each kill what was shown as saved is in the book" [ $survived -eq $kills ]
[ -z "${KILLS_ALONE:-}" ] || finish

survived=0
for part in $(moments 3 $hangups); do
	moment=$(portion "$part" "$longest")
	run_on
	closed "$moment"
	after "a closed terminal after $moment s of the run"
done
echo "$hangups closed terminals, $survived held"
check "after each closed terminal, too" [ $survived -eq $hangups ]

# A disk that takes no more: files stay below 4096 bytes until the limit is lifted.
cp "$base" "$book"
begin 8
check "a book on a full disk can be read" wait_for 10 shows 'q quit'
keys Enter
wait_for 10 shows 'of 40 done'
keys 7 Enter
check "a count that cannot be saved is said to be not saved" \
	wait_for 10 shows 'NOT SAVED'
check "with the cause" shows 'disk is full'
check "it stays on the screen" shows '^ > 1 .*\[ 7 '
check "and nothing is done" shows '^ 0 of 40 done'
keys Enter
check "Enter tries again, in vain" wait_for 10 shows 'NOT SAVED'
check "the book has nothing of it" [ -z "$(saved "$book")" ]
prlimit --pid "$pid" --fsize=unlimited
keys Enter
check "once there is room Enter saves it" wait_for 10 shows '^ 1 of 40 done'
check "and the cursor goes on" shows '^ > 2 '
tmux send-keys -l -- "$(awk 'NR > 1 { printf "%s\r", $2 }' "$work/run")"
check "the rest of the run goes in" wait_for 20 shows '^ 40 of 40 done'
keys Escape
wait_for 10 shows 'q quit'
keys q
check "the program ends" wait_for 10 gone
saved "$book" >"$work/saved"
check "the book has the whole run" cmp "$work/run" "$work/saved"
check "and is sound" sound

finish
