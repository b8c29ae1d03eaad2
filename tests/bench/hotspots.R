# The shuffles of hotspots.c as a plain R loop, ten times over as there. The generator is
# R's, so the count differs a little.
set.seed(1)
high <- 0
moths <- c(sample(0:39, 5, TRUE), sample(0:11, 55, TRUE))
nights <- sample(70:84, 60, TRUE)
above <- moths * sum(nights) - nights * sum(moths)
for (pass in 1:10)
	for (block in 1:12) {
		observed <- sum(above[(block - 1) * 5 + 1:5])
		for (k in 1:9999)
			high <- high + (sum(above[sample.int(60, 5)]) >= observed)
	}
cat(high, "\n")
