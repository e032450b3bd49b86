/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why the bit bends, clogs, burns and wears as it does, and what keeps the work where it is.
 */
#include "plan/words-why-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* ---- Bending ---- */

static const char *
stress_id (const SpelchBit *bit)
{
  return bit->body_material == SPELCH_TOOL_CARBIDE ? "stress-carbide"
         : bit->body_material == SPELCH_TOOL_HSS   ? "stress-hss"
                                                   : "stress-steel";
}

static void
say_stress (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  double limit = plan->stress_share > 0 ? plan->stress_mpa / plan->stress_share : 0;
  g_autofree char *stress = spelch_words_count (plan->stress_mpa);
  g_autofree char *most = spelch_words_count (limit);
  if (limit > 0)
    spelch_chain_constant (
        chain, stress_id (chain->of->bit),
        g_strdup_printf (
            _ ("With a dull edge in hard stock it would carry up to %s MPa of the %s MPa its body may"),
            stress, most));
}

void
spelch_chain_bending (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchPlan *plan = of->plan;
  int accepted = of->part->accepted_seen;
  g_autofree char *bends = spelch_chain_decimal (chain, plan->deflection_mm, 3);
  g_autofree char *most = spelch_chain_decimal (chain, plan->deflection_limit_mm, 2);
  g_autofree char *peak = spelch_words_count (plan->sideways_peak_n);
  g_autofree char *out = spelch_words_length (chain->numbers, plan->stick_out_mm);
  g_autofree char *stiff = spelch_words_count (of->part->machine.stiffness_n_mm);
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_ANALOGY,
      g_strdup_printf (_ ("Pushed sideways with up to %s N, the tip %s below the collet gives way by %s mm"),
                       peak, out, bends));
  spelch_chain_constant (
      chain,
      accepted <= 1   ? "deflection-grade-1"
      : accepted == 2 ? "deflection-grade-2"
                      : "deflection-grade-3",
      g_strdup_printf (_ ("Where seen edges of grade %d are accepted it may give way by %s mm"),
                       MIN (accepted, 3), most));
  spelch_chain_constant (
      chain, "fluted-diameter",
      g_strdup_printf (_ ("Its fluted part is as stiff as a round rod of %d %% of its diameter"),
                       spelch_words_per_cent (of->constants->fluted_diameter)));
  if (plan->deflection_mm > 0)
    {
      g_autofree char *machine = spelch_chain_decimal (chain, plan->deflection_machine_mm, 3);
      g_autofree char *bit
          = spelch_chain_decimal (chain, plan->deflection_mm - plan->deflection_machine_mm, 3);
      spelch_chain_add (
          chain, SPELCH_EVIDENCE_GEOMETRY,
          g_strdup_printf (spelch_plan_machine_gives (plan)
                               ? _ ("The machine has the greater part of that, %s mm; the bit bends by %s mm")
                               : _ ("The machine has %s mm of that; the bit has the rest and bends by %s mm"),
                           machine, bit));
    }
  if (of->part->machine.stiffness_n_mm > 0)
    spelch_chain_say (chain,
                      g_strdup_printf (_ ("The machine itself gives way by 1 mm for each %s N."), stiff));
  say_stress (chain);
}

/* ---- Chip room and heat ---- */

static void
say_clearing (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  bool straight = of->plan->flutes.helix < SPELCH_NEUTRAL_HELIX_RAD;
  bool down = !straight && of->plan->flutes.turn_over <= 0;
  const char *id = straight ? "clearing-straight" : down ? "clearing-down" : "clearing-up";
  double value = straight ? of->constants->clearing_straight
                 : down   ? of->constants->clearing_down
                          : of->constants->clearing_up;
  spelch_chain_constant (
      chain, id,
      g_strdup_printf (straight ? _ ("Straight edges clear chips %d %% as well as up-shear does")
                       : down
                           ? _ ("Down-shear over a closed bottom clears chips %d %% as well as up-shear does")
                           : _ ("Where the shear carries chips up, they are taken to leave freely (%d %%)"),
                       spelch_words_per_cent (value)));
}

void
spelch_chain_room (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchBoard *board = &of->part->board;
  int edges = spelch_flute_fewest_edges (&of->plan->flutes);
  bool crumbs = board->layers[board->n_layers / 2].material >= SPELCH_MATERIAL_PARTICLEBOARD;
  g_autofree char *bulk
      = spelch_chain_decimal (chain, crumbs ? of->constants->bulking_board : of->constants->bulking_wood, 1);
  double flute = edges <= 1   ? of->constants->flute_share_1
                 : edges == 2 ? of->constants->flute_share_2
                              : of->constants->flute_share_3;
  if (of->plan->chip_room <= 0)
    {
      spelch_chain_add (
          chain, SPELCH_EVIDENCE_GEOMETRY,
          g_strdup (_ ("The cut is open at one side, so chips fall out and the flutes never fill")));
      return;
    }
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_ANALOGY,
      g_strdup_printf (_ ("Chips fill %d %% of the room they have in the flutes; at 100 %% they pack"),
                       spelch_words_per_cent (of->plan->chip_room)));
  spelch_chain_constant (chain, crumbs ? "bulking-board" : "bulking-wood",
                         g_strdup_printf (_ ("Loose, they take %s times the room they had as wood"), bulk));
  spelch_chain_constant (
      chain,
      edges <= 1   ? "flute-share-1"
      : edges == 2 ? "flute-share-2"
                   : "flute-share-3",
      g_strdup_printf (_ ("Of the bit's cross-section %d %% is flute"), spelch_words_per_cent (flute)));
  say_clearing (chain);
}

void
spelch_chain_heat (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchPlan *plan = of->plan;
  g_autofree char *heat = spelch_words_count (plan->wall_heat);
  g_autofree char *caution = spelch_words_count (of->constants->heat_caution);
  g_autofree char *burns = spelch_words_count (of->constants->heat_burns);
  g_autofree char *feed = spelch_words_feed (chain->numbers, plan->cool_feed_mm_min);
  g_autofree char *rpm = spelch_words_count (plan->speed_rpm);
  g_autofree char *blunting = spelch_chain_decimal (chain, plan->blunting, 1);
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_ANALOGY,
      g_strdup_printf (_ ("Rubbing leaves about %s mJ in each square millimetre of wall"), heat));
  spelch_chain_constant (
      chain, "heat-burns",
      g_strdup_printf (_ ("From %s mJ/mm² on there is a caution, and from %s on the wall burns"), caution,
                       burns));
  if (plan->cool_feed_mm_min >= 1)
    spelch_chain_add (
        chain, SPELCH_EVIDENCE_ANALOGY,
        g_strdup_printf (
            _ ("At %s rpm the wall keeps cool from %s on; a quicker feed or a slower spindle cools it"), rpm,
            feed));
  spelch_chain_add (chain, SPELCH_EVIDENCE_ANALOGY,
                    g_strdup_printf (_ ("The edge rubs %s times as hard as a new one"), blunting));
  say_clearing (chain);
}

/* ---- Holding ---- */

static void
say_band (SpelchChain *chain, const SpelchSeat *seat)
{
  g_autofree char *low = spelch_chain_decimal (chain, seat->low_n, 1),
                  *high = spelch_chain_decimal (chain, seat->high_n, 1);
  g_autofree char *mean = spelch_chain_decimal (chain, seat->mean_n, 1);
  g_autofree char *factor = spelch_chain_decimal (chain, chain->of->constants->band_axial, 1);
  g_autofree char *bound = spelch_words_count (seat->bound_n);
  bool several = chain->of->plan->n_passes > 1;
  spelch_chain_constant (
      chain, "band-axial",
      g_strdup_printf (several ? _ ("In the pass that is worst for it the force along the bit is %s N on "
                                    "average, and may be %s times as much or as little: %s to %s N")
                               : _ ("The force along the bit is %s N on average, and may be %s times as much "
                                    "or as little: %s to %s N"),
                       mean, factor, low, high));
  if (seat->bound_n >= 0.5)
    spelch_chain_add (chain, SPELCH_EVIDENCE_ANALOGY,
                      g_strdup_printf (_ ("Within a turn it parts them with up to %s N"), bound));
}

static void
say_friction (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  bool rubber = of->part->holding.on_rubber, laminate = spelch_plan_is_laminate (of->plan, SPELCH_SIDE_FAR);
  double value = rubber     ? of->constants->hold_friction_rubber
                 : laminate ? of->constants->hold_friction_laminate
                            : of->constants->hold_friction_raw;
  g_autofree char *friction = spelch_chain_decimal (chain, value, 2);
  spelch_chain_constant (
      chain,
      rubber     ? "hold-friction-rubber"
      : laminate ? "hold-friction-laminate"
                 : "hold-friction-raw",
      g_strdup_printf (_ ("Friction under the work is taken as %s of the press"), friction));
}

static void
say_vacuum (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchHolding *holding = &of->part->holding;
  g_autofree char *usual = spelch_chain_decimal (chain, of->constants->vacuum_default, 0);
  if (holding->method != SPELCH_HOLD_VACUUM)
    return;
  if (holding->vacuum_kpa <= 0)
    spelch_chain_constant (
        chain, "vacuum-default",
        g_strdup_printf (_ ("How strong the vacuum is isn't told: %s kPa is assumed"), usual));
  spelch_chain_constant (chain, "vacuum-leak",
                         g_strdup_printf (_ ("Through a spoilboard %d %% of it reaches the work"),
                                          spelch_words_per_cent (of->constants->vacuum_leak)));
}

static void
say_needed (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  g_autofree char *needed = spelch_words_count (plan->hold_needed_n);
  g_autofree char *available = spelch_words_count (plan->hold_available_n);
  g_autofree char *wanted = spelch_chain_decimal (chain, chain->of->constants->hold_factor, 0);
  g_autofree char *weight = spelch_words_count (plan->weight_n);
  if (plan->hold_needed_n <= 0)
    return;
  spelch_chain_constant (
      chain, "hold-factor",
      g_strdup_printf (_ ("To hold %s times the force, a press of %s N on the bed is needed"), wanted,
                       needed));
  if (plan->hold_available_n > 0)
    spelch_chain_say (chain, g_strdup_printf (_ ("There is a press of %s N."), available));
  if (plan->weight_n > 0)
    spelch_chain_add (chain, SPELCH_EVIDENCE_GEOMETRY,
                      g_strdup_printf (_ ("Of that the piece's own weight is %s N"), weight));
  say_friction (chain);
  say_vacuum (chain);
}

void
spelch_chain_seat (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  g_autofree char *peak = spelch_words_count (plan->sideways_peak_n);
  spelch_chain_say (chain, spelch_words_seat (plan));
  for (guint i = 0; i < plan->n_seats; i++)
    say_band (chain, &plan->seats[i]);
  spelch_chain_add (chain, SPELCH_EVIDENCE_ANALOGY,
                    g_strdup_printf (_ ("Sideways the bit pushes with up to %s N"), peak));
  say_needed (chain);
  spelch_chain_say (chain, spelch_words_seat_advice (plan, chain->of->part, chain->numbers));
}

void
spelch_chain_tabs (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchTabHold *tabs = &of->plan->tabs;
  if (tabs->count == 0)
    {
      spelch_chain_say (chain, g_strdup (_ ("This cut has no tabs.")));
      return;
    }
  g_autofree char *width = spelch_words_exactly (chain->numbers, tabs->width_mm);
  g_autofree char *thick = spelch_words_exactly (chain->numbers, tabs->thickness_mm);
  g_autofree char *holds = spelch_words_count (tabs->holds_n);
  g_autofree char *needed = spelch_words_count (tabs->needed_n);
  g_autofree char *factor = spelch_chain_decimal (chain, of->constants->hold_factor, 0);
  g_autofree char *quantile = spelch_chain_decimal (chain, of->constants->tab_quantile, 3);
  g_autofree char *worst = spelch_chain_decimal (chain, tabs->factor_worst, 1);
  spelch_chain_say (chain, spelch_words_tabs (of->plan, chain->numbers));
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_ANALOGY,
      g_strdup_printf (
          g_dngettext (GETTEXT_PACKAGE, "%u tab, %s wide and %s thick, bears %s N sideways at the least",
                       "%u tabs, %s wide and %s thick, bear %s N sideways at the least", tabs->count),
          tabs->count, width, thick, holds));
  spelch_chain_constant (chain, "tab-quantile",
                         g_strdup_printf (_ ("At the least means the mean less %s standard deviations, which "
                                             "nineteen pieces in twenty exceed"),
                                          quantile));
  spelch_chain_constant (
      chain, "hold-factor",
      g_strdup_printf (_ ("To hold %s times the force, they need to bear %s N"), factor, needed));
  if (tabs->factor_worst > 0)
    spelch_chain_say (
        chain, g_strdup_printf (_ ("With everything at its worst they hold %s times the force."), worst));
}

/* ---- Wear ---- */

/* Constants of an edge's life, by material. */
static const char *const LIVES[] = { [SPELCH_MATERIAL_SOFTWOOD] = "life-softwood",
                                     [SPELCH_MATERIAL_HARDWOOD] = "life-hardwood",
                                     [SPELCH_MATERIAL_BIRCH_PLY] = "life-birch-ply",
                                     [SPELCH_MATERIAL_SOFTWOOD_PLY] = "life-softwood-ply",
                                     [SPELCH_MATERIAL_PARTICLEBOARD] = "life-particleboard",
                                     [SPELCH_MATERIAL_MDF] = "life-mdf",
                                     [SPELCH_MATERIAL_LAMINATE] = "life-laminate" };

static void
say_life (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  double life = plan->wear_share > 0 ? plan->edge_path_m / plan->wear_share : 0;
  const SpelchConstants *k = chain->of->constants;
  const double lives[] = { [SPELCH_MATERIAL_SOFTWOOD] = k->life_softwood,
                           [SPELCH_MATERIAL_HARDWOOD] = k->life_hardwood,
                           [SPELCH_MATERIAL_BIRCH_PLY] = k->life_birch_ply,
                           [SPELCH_MATERIAL_SOFTWOOD_PLY] = k->life_softwood_ply,
                           [SPELCH_MATERIAL_PARTICLEBOARD] = k->life_particleboard,
                           [SPELCH_MATERIAL_MDF] = k->life_mdf,
                           [SPELCH_MATERIAL_LAMINATE] = k->life_laminate };
  const SpelchBoard *board = &chain->of->part->board;
  int worst = (int)board->layers[0].material;
  for (guint i = 1; i < board->n_layers; i++)
    worst = lives[board->layers[i].material] < lives[worst] ? (int)board->layers[i].material : worst;
  g_autofree char *bare = spelch_words_count (lives[worst]);
  g_autofree char *all = spelch_words_count (life);
  spelch_chain_constant (chain, LIVES[worst],
                         g_strdup_printf (_ ("An edge of uncoated carbide is dull after about %s m through "
                                             "the stock of this board that wears it most"),
                                          bare));
  if (life > 0)
    spelch_chain_add (chain, SPELCH_EVIDENCE_PRACTICE,
                      g_strdup_printf (_ ("For this bit, in what this cut meets, %s m are counted"), all));
}

static void
say_tool (SpelchChain *chain)
{
  const SpelchBit *bit = chain->of->bit;
  const SpelchConstants *k = chain->of->constants;
  g_autofree char *coated = spelch_chain_decimal (chain, k->life_coated, 1),
                  *hss = spelch_chain_decimal (chain, k->life_hss, 2);
  if (bit->edge_material != SPELCH_TOOL_CARBIDE)
    spelch_chain_constant (chain, "life-hss",
                           g_strdup_printf (_ ("Steel edges last %s times as long as carbide"), hss));
  else if (bit->coated)
    spelch_chain_constant (chain, "life-coated",
                           g_strdup_printf (_ ("Coated edges last %s times as long"), coated));
}

void
spelch_chain_wear (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchPlan *plan = of->plan;
  g_autofree char *path = spelch_words_count (plan->edge_path_m);
  g_autofree char *tooth = spelch_chain_decimal (chain, plan->feed_per_tooth, 3);
  g_autofree char *share = spelch_chain_decimal (chain, plan->wear_share * 100, 2);
  g_autofree char *price = spelch_chain_decimal (chain, of->bit->price, 2),
                  *cost = spelch_chain_decimal (chain, plan->cost, 2);
  g_autofree char *cut = spelch_words_count (of->bit->metres_cut);
  if (!plan->life_known)
    {
      spelch_chain_say (chain, g_strdup (_ ("Nothing is fed, so nothing wears.")));
      return;
    }
  spelch_chain_say (chain, spelch_words_upkeep (plan, chain->numbers));
  spelch_chain_log (chain, SPELCH_WHY_WEAR);
  spelch_chain_add (chain, SPELCH_EVIDENCE_GEOMETRY,
                    g_strdup_printf (_ ("At %s mm a tooth one edge goes %s m through the stock for one "
                                        "piece; thin chips make that way longer"),
                                     tooth, path));
  say_life (chain);
  say_tool (chain);
  spelch_chain_add (chain, SPELCH_EVIDENCE_PRACTICE,
                    g_strdup_printf (_ ("One piece uses up %s %% of an edge's life"), share));
  if (of->bit->metres_cut > 0)
    spelch_chain_say (chain,
                      g_strdup_printf (_ ("The bit has cut %s m since it was new or sharpened."), cut));
  if (of->bit->price > 0)
    spelch_chain_say (chain, g_strdup_printf (_ ("Of its price, %s, that is %s."), price, cost));
}
