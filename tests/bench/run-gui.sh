#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
#
# run-gui.sh WIDTHxHEIGHT PROGRAM...: runs a Python script, or another program, with a display, a session bus and an accessibility
# bus of its own. Only it writes to standard output; what the buses have to say goes to standard error.
size=$1
shift
exec 9>&1 1>&2
case $1 in *.py) set -- /usr/bin/python3 "$@" ;; esac
# A number of its own for each display: looking for a free one isn't safe when several do.
exec xvfb-run -a -n $((100 + $$ % 30000)) -s "-screen 0 ${size}x24 -noreset" dbus-run-session -- /bin/sh -c 'exec "$@" >&9 9>&-' sh "$@"
