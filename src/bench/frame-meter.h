/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Frame meter: writes how long each frame of a window took, for the benchmark. Not attached in ordinary use.
 */
#pragma once

#include <gtk/gtk.h>

/* Environment variable that names the file to write to. */
#define SPELCH_FRAME_METER_VARIABLE "SPELCH_FRAME_METER"

/* From now on writes a line to the file, whose name is followed by @window_name ("" for the bench): first
 * "started MS", of work by the whole program until its first frame was painted; then one for each frame of
 * @window (realized): "frame MS BEFORE WAITED". MS: from the frame clock's before-paint to after-paint and
 * the display having done it. BEFORE: ms of work done before that on the pointer motions that the frame
 * shows. WAITED: ms from the first of these motions (server time) to the same end, -1 when there was none.
 * Does nothing when the variable isn't set. */
void spelch_frame_meter_attach (GtkWidget *window, const char *window_name);
