#!/bin/sh
# Two programs on one book, 1 000 edits through the pages of both, interleaved by lot:
# counts, new names, new traps, thresholds. Nothing that was said to be saved is lost.
# SEED picks what goes on next. No card: its counts go past what one holds.
. tests/e2e/lib.sh

edits=1000 seed=${SEED:-20260721}
if [ "${SANITIZED:-}" ]; then edits=200; fi # slow there
book="$work/book.db" day=2026-07-21
[ -e /dev/pts/ptmx ] || no_terminal

awk 'BEGIN {
	print "farm,block,trap,pest,lure,card,order,hung"
	for (i = 1; i <= 4; i++)
		printf "%s,%d,CM,CM 1 mg,,%d,2026-07-14\n",
			i < 4 ? "Addermoor,Old Kiln" : "Hather Bend,Weir Side", i, i
}' >"$work/traps.csv"
cat >"$work/thresholds.csv" <<'END_OF_FILE'
pest,farm,measure,span,comparator,value
CM,Addermoor,trap-week,1,>=,5
CM,Hather Bend,trap-week,1,>=,5
END_OF_FILE
printf 'name,value\nodd_count,9999\n' >"$work/settings.csv" # large ones are not asked about
for kind in traps thresholds settings; do
	$prog --book "$book" --today $day import $kind "$work/$kind.csv" >>"$work/import.out"
done
${CC:-cc} -std=c11 -D_DEFAULT_SOURCE -O2 tests/e2e/two.c tests/e2e/window.c \
	tests/e2e/glass.c -lutil -o "$work/two"

check "two programs make $edits edits" \
	"$work/two" "$prog" "$book" $day "$seed" $edits >"$work/saved"
grep -E '^[a-z]+	' "$work/saved" >"$work/saved.tsv"
check "each was said to be saved" [ "$(wc -l <"$work/saved.tsv")" -eq $edits ]
check "the book is sound" $prog --book "$book" --today $day check >"$work/check"

# What was said, beside what each record was before every change, and what it is now.
sqlite3 "$work/held.db" >"$work/lost" <<END
ATTACH '$book' AS book;
CREATE TABLE said (kind, value INTEGER, who, "read" INTEGER, sent INTEGER,
	told INTEGER, asked INTEGER);
.mode tabs
.import $work/saved.tsv said
.mode list
CREATE TABLE held AS
	SELECT h.id AS at, h.uid, h.kind, h.old AS row FROM book.history h
		WHERE h.op <> 'insert'
	UNION ALL SELECT 1 << 60, uid, 'visit', json_object('count', count) FROM visit
	UNION ALL SELECT 1 << 60, uid, 'trap', json_object('label', label) FROM trap
	UNION ALL SELECT 1 << 60, uid, 'threshold', json_object('value_x100', value_x100)
		FROM threshold;
CREATE TABLE value AS
	SELECT at, uid, kind, CASE kind
		WHEN 'visit' THEN json_extract(row, '$.count')
		WHEN 'trap' THEN json_extract(row, '$.label')
		ELSE json_extract(row, '$.value_x100') / 100 END AS value FROM held
		WHERE kind IN ('visit', 'trap', 'threshold');
CREATE TABLE found AS
	SELECT s.*, v.uid, min(v.at) AS at FROM said s LEFT JOIN value v ON v.value =
		CASE s.kind WHEN 'rename' THEN 'R' || s.value
			WHEN 'new' THEN 'N' || s.value || 'x' ELSE s.value END
		AND v.kind = CASE s.kind WHEN 'count' THEN 'visit'
			WHEN 'threshold' THEN 'threshold' ELSE 'trap' END
	GROUP BY s.value;
SELECT 'lost: ' || kind || ' ' || value FROM found WHERE uid IS NULL;
SELECT 'an older one won: ' || a.kind || ' ' || a.value FROM found a JOIN found b
	ON a.uid = b.uid AND a.kind = b.kind WHERE a.told < b.sent AND a.at > b.at;
WITH pair AS (SELECT *, lag(sent) OVER w AS before, lag(who) OVER w AS other
	FROM found WHERE kind <> 'new' WINDOW w AS (PARTITION BY kind, uid ORDER BY at))
	SELECT 'nobody was told: ' || kind || ' ' || value FROM pair
	WHERE other <> who AND before > "read" AND NOT asked;
.output $work/asked
SELECT count(*) FROM said WHERE asked;
END
check "the book could be looked into" [ -s "$work/asked" ]
cat "$work/lost"
check "what was said to be saved is in the book or its history" [ ! -s "$work/lost" ]
echo "$edits edits, $(cat "$work/asked") of them over a change of the other program"
check "they met, and said so" [ "$(cat "$work/asked")" -ge $((edits / 50)) ]

finish
