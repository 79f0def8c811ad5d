// Code of this room follows.
