/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Wear: how far an edge travels through the wood, and how much of its life that takes. An edge wears with the
 * way it rubs along, not with the metres cut: thin chips mean many turns, and wear it out sooner. Lives are
 * shop practice; lengths in m.
 */
#pragma once

/* Way of each edge through the wood for each m of cut, m: arc / (edges f_z), from feed = edges f_z a turn.
 * @arc: way in one turn, and @feed_per_tooth, mm; 0 when nothing is fed. */
double spelch_wear_path (double arc, int edges, double feed_per_tooth);

/* Share of an edge's life that is gone when it has blunted to @blunting: 0 at @new, @share_sharp at @sharp,
 * 1 at @dull, straight between them; within 0..1. @new < @sharp < @dull. */
double spelch_wear_by_blunting (double blunting, double new, double sharp, double dull, double share_sharp);

/* Metres of cut left in an edge, m: @life is its whole life in edge path, @used the share that is gone, @path
 * as above. 0 when @path is. */
double spelch_wear_left (double life, double used, double path);

/* Share of a life that @edge_path takes; 0 for no life. */
double spelch_wear_share (double edge_path, double life);
