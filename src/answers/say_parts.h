/* say_parts.h - what the files of say share. */
#ifndef ANSWERS_SAY_PARTS_H
#define ANSWERS_SAY_PARTS_H

#include <stddef.h>

/* Adds a part to a list: "a, b". */
void say_add(char *out, size_t size, const char *text);

#endif
