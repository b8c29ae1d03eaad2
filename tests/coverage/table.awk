# Sums "file LAYER FILE lines-run lines branches-taken branches" by layer, in their order.
function share(part, whole) {
	return whole ? sprintf("%.1f %%", int(1000 * part / whole) / 10) : "-"
}
function row(name, run, lines, taken, branches) {
	printf "%-36s %6d %6d %8s %8d %6d %8s\n", name, lines, run, share(run, lines),
		branches, taken, share(taken, branches)
}
BEGIN {
	printf "%-36s %6s %6s %8s %8s %6s %8s\n", "", "lines", "run", "", "branches",
		"taken", ""
}
!($2 in seen) {
	seen[$2] = ++n
	names[n] = $2
}
{
	i = seen[$2]
	run[i] += $4
	lines[i] += $5
	taken[i] += $6
	branches[i] += $7
	if (files)
		row($3, $4, $5, $6, $7)
}
END {
	for (i = 1; i <= n; i++) {
		row(names[i], run[i], lines[i], taken[i], branches[i])
		all_run += run[i]
		all_lines += lines[i]
		all_taken += taken[i]
		all_branches += branches[i]
	}
	row("all", all_run, all_lines, all_taken, all_branches)
}
