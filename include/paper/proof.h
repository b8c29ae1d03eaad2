/* proof.h - the published cases and what this program makes of them, as plain text. */
#ifndef PAPER_PROOF_H
#define PAPER_PROOF_H

#include "answers/proof.h"
#include "base/buf.h"

struct proof_text {
	const struct proof_case *cases; /* those of one id stand together */
	size_t n;
	const char *legend; /* how to read an input */
};

/* Source by source, no line wider than `cols` (40..); the last sentence is the sum. */
void paper_proof(const struct proof_text *p, int cols, struct buf *out);

#endif
