/* run_parts.h - what the files of the run page share. */
#ifndef SCREEN_RUN_PARTS_H
#define SCREEN_RUN_PARTS_H

#include "screen/run_page.h"

/* NULL: none is picked. */
const struct run_trap *run_picked(const struct run_page *p);
void run_pick_at(struct run_page *p, size_t i);
/* Drops what is typed. */
void run_drop(struct run_page *p);
/* The open trap after that one, wrapping; n when all are done. */
size_t run_next_open(const struct run *r, size_t after);

#endif
