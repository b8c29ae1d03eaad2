#!/bin/sh
# The season page of the demo, as two readers that are not ours see it: each block, flight
# and alert is there, with the numbers that the other commands write.
. tests/e2e/lib.sh

book=$work/book.db

m() {
	"$prog" --book "$book" --today 2026-07-21 "$@"
}

for file in traps places visits visits-2025 thresholds weather biofix dispensers \
	treatments picks fruit-checks answers; do
	m import "${file%-2025}" "share/demo/$file.csv" >/dev/null 2>&1 || {
		echo "FAILED: the demo's $file were not taken in"
		failed=$((failed + 1))
	}
done

blocks() {
	cut -d, -f1,2 share/demo/traps.csv | sed 1d | sort -u
}

day() {
	date -u -d "$1" '+%-d %b'
}

# Rows of flight --csv as the page has them, whole numbers and tenths rounded.
flights() {
	m flight --pest "$1" --farm "$2" --block "$3" --csv | tr -d '\r' | sed 1d |
		while IFS=, read -r _ _ n first peak rate d10 d50 d90 moths _; do
			printf 'flight %s %s %s %.1f %s %s %s %.0f\n' "$n" "$(day "$first")" \
				"$(day "$peak")" "$rate" "$(day "$d10")" "$(day "$d50")" \
				"$(day "$d90")" "$moths"
		done
}

# $1 a file of text, $2 what each of its lines must hold
has_all() {
	tr -s ' \n' '  ' <"$1" >"$work/flat"
	while read -r line; do
		grep -qF -- "$line" "$work/flat" || {
			echo "not there: $line"
			return 1
		}
	done <"$2"
}

blocks >"$work/blocks"
for pest in CM OFM OBLR; do
	while IFS=, read -r farm block; do
		flights "$pest" "$farm" "$block"
	done <"$work/blocks"
done >"$work/flights"
# "trap 2: 4.0 a week, threshold >=3" stands as "trap 2: 4.0 (>=3)"
while IFS=, read -r farm block; do
	m record --farm "$farm" --block "$block" |
		sed -n 's/.* OVER [A-Z]*, \(trap .*\) a week, threshold \(.*\)/\1 (\2)/p'
done <"$work/blocks" >"$work/alerts"
cut -d, -f2 "$work/blocks" >"$work/names"

check "the demo has flights to look for" test "$(wc -l <"$work/flights")" -ge 12
check "and alerts" test "$(wc -l <"$work/alerts")" -ge 20

m season >"$work/season.txt"
check "no line of the text is wider than 78" \
	sh -c "[ \$(wc -L <'$work/season.txt') -le 78 ]"
check "the text has each block" has_all "$work/season.txt" "$work/names"
check "the text has each flight" has_all "$work/season.txt" "$work/flights"
check "the text has each alert" has_all "$work/season.txt" "$work/alerts"

# Beside its chart a block has a flight to a column: back to a flight to a line.
upright() {
	pdftotext -layout -x 366 -y 0 -W 200 -H 842 "$1" - | awk -F '  +' '
		{ sub(/^[ \f]+/, "") }
		/^flight 1/ { n = NF; for (i = 1; i <= n; i++) row[i] = $i }
		n && /^(first|peak|a week|[159]0 %|moths) / {
			for (i = 1; i <= n; i++) row[i] = row[i] " " $(i + 1)
		}
		n && /^moths/ { for (i = 1; i <= n; i++) print row[i]; n = 0 }'
}

readable() {
	case $1 in
	poppler) pdfinfo "$2" >/dev/null 2>"$work/said" ;;
	ghostscript) gs -q -dNOPAUSE -dBATCH -sDEVICE=nullpage "$2" >"$work/said" 2>&1 ;;
	esac && ! grep -qi error "$work/said"
}

size_is() {
	pdfinfo "$1" | grep -q "^Page size: *$2"
}

if m season -o "$work/season.pdf" 2>"$work/said"; then
	m season -o "$work/again.pdf"
	check "the same season is the same file" cmp -s "$work/season.pdf" "$work/again.pdf"
	m season --paper letter --farm Addermoor -o "$work/letter.pdf"
else
	check "a build without PDFs says so" grep -q 'writes text only' "$work/said"
	finish
fi
if command -v pdftotext >/dev/null; then
	check "poppler opens it" readable poppler "$work/season.pdf"
	check "it is A4" size_is "$work/season.pdf" '595.* x 84[12]'
	check "or letter" size_is "$work/letter.pdf" '612 x 792'
	pdftotext -layout "$work/season.pdf" "$work/pdf.txt"
	check "the PDF has each block" has_all "$work/pdf.txt" "$work/names"
	upright "$work/season.pdf" >"$work/pdf-flights.txt"
	check "the PDF has each flight" has_all "$work/pdf-flights.txt" "$work/flights"
	check "the PDF has each alert" has_all "$work/pdf.txt" "$work/alerts"
	check "and what was decided" grep -q 'looked at 150 fruit first' "$work/pdf.txt"
	check "and a source" grep -q 'niab.com' "$work/pdf.txt"
	check "and the cautions" grep -q 'The product label is the law' "$work/pdf.txt"
else
	echo "left out: what poppler reads, as it is not here"
fi
command -v gs >/dev/null &&
	check "ghostscript opens it" readable ghostscript "$work/season.pdf"

m season --season 2025 --farm Addermoor >"$work/past.txt"
check "a past season is told as of its last day" \
	grep -q '1 Jan 2025 to 31 Dec 2025, as the book stood on Wed 31 December 2025' \
	"$work/past.txt"
m season --season 2027 2>"$work/said"
check "one that is to come is not there" test $? -eq 4
check "and that is said" grep -q 'season 2027 has not begun' "$work/said"
m season --paper a5 2>"$work/said"
check "another paper is refused" test $? -eq 2

finish
