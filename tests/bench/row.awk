# row.awk - a row of the table out of pairs, a line each: ours, the other's, and perhaps
# seconds of work of both. Variables:
#   what, beside  the words of the two sides
#   unit          s, us, MiB, bytes or cells, of ours; other, of the other, if not the same
#   goal          the ratio wished for
#   held          what it may be where the goal is out of reach, else empty
#   slack         times that before it counts as broken
#   by            what is judged: clock or work
#   short         ratio: that and its spread alone; base: what the other takes before it
# The ratio is the middle one of all pairs, but for those of which the other is 0. Exit
# status 1: it is broken; without a row: there are no pairs.
function sort(x, n,    i, j, kept) {
	for (i = 2; i <= n; i++) {
		kept = x[i]
		for (j = i - 1; j > 0 && x[j] > kept; j--)
			x[j + 1] = x[j]
		x[j + 1] = kept
	}
}
function middle(x, n) {
	sort(x, n)
	return (x[int((n + 1) / 2)] + x[int(n / 2) + 1]) / 2
}
function amount(x, unit) {
	if (unit == "us") {
		x /= 1e6
		unit = "s"
	}
	if (unit == "s" && x < 0.9995)
		return sprintf(x < 0.00995 ? "%.2f ms" : "%.0f ms", x * 1e3)
	return sprintf(unit == "s" ? "%.2f %s" : unit == "MiB" ? "%.1f %s" : "%.0f %s", x, unit)
}
$2 > 0 {
	ours[++n] = $1
	theirs[n] = $2
	ratio[n] = $1 / $2
	if (NF > 3 && $4 > 0)
		work[++n_work] = $3 / $4
}
END {
	if (!n)
		exit 1
	mid = judged = middle(ratio, n)
	of_work = "-"
	if (n_work) {
		of_work = middle(work, n_work)
		if (by == "work")
			judged = of_work
		of_work = sprintf("%.2f", of_work)
	}
	broken = judged > (held == "" ? goal : held) * slack
	spread = n == 1 ? "-" : sprintf("%.2f to %.2f", ratio[1], ratio[n])
	mark = broken ? " **broken**" : judged > goal * 1.005 ? " (missed)" : ""
	if (short == "base")
		printf "%s | ", amount(middle(theirs, n), unit)
	if (short)
		printf "%.2f (%s)%s", mid, spread, mark
	else
		printf "| %s | %s | %s | %s | %.2f | %s | %s | %s%s |\n", what, beside,
			amount(middle(ours, n), unit),
			amount(middle(theirs, n), other == "" ? unit : other), mid, spread,
			of_work, goal (held == "" ? "" : ", held to " held), mark
	exit broken
}
