/* terminal.h - stands in for src/term: keys come out of bytes, frames are looked over
 * and dropped.
 *
 *     0x20 and up     that character, UTF-8
 *     CR LF ESC DEL   Enter, Escape, Backspace; TAB
 *     0x01 .. 0x08    up, down, left, right, page up, page down, home, end
 *     0x0E            Delete
 *     0x0F R C        the terminal has 1 + R % 60 rows, 1 + C % 200 columns from now on
 *     others          nothing came for a while
 *
 * After the last one the terminal is gone. */
#ifndef TESTS_FUZZ_TERMINAL_H
#define TESTS_FUZZ_TERMINAL_H

#include <stddef.h>
#include <stdint.h>

void terminal_type(const uint8_t *keys, size_t n);

#endif
