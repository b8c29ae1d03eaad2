#include "screen/input.h"

bool input_is_key(struct input in)
{
	return in.kind != INPUT_NONE && in.kind != INPUT_RESIZE &&
	       in.kind != INPUT_LEAVE;
}
