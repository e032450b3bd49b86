/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/trade-words.h"

#include <glib/gi18n-lib.h>
#include <stdbool.h>
#include <string.h>

typedef struct
{
  const char *forms;
  const char *meaning;
} TradeWord;

/* TRANSLATORS: the "forms of a word" are all forms in which it stands in a text, parted by "|". The first is
 * shown beside its meaning. Give those of your language, as many as there are. A small letter stands for a
 * capital too, and a "*" at the end for any ending: "Spannut*" is found in "Spannuten". */
static const TradeWord WORDS[] = {
  { NC_ ("forms of a word", "rpm"), N_ ("Turns of the spindle in a minute.") },
  { NC_ ("forms of a word", "kPa"), N_ ("Kilopascals, the measure of how strongly a vacuum holds: 10 kPa "
                                        "press each square centimetre with 1 N.") },
  { NC_ ("forms of a word", "N"),
    N_ ("Newtons, the measure of force: 10 N press about as much as a weight of 1 kg.") },
  { NC_ ("forms of a word", "W|watt|watts"), N_ ("Watts, the measure of power: how hard a motor can work.") },
  { NC_ ("forms of a word", "zero|datum"),
    N_ ("Where depths are measured from: the bed, or the face toward the motor.") },
  { NC_ ("forms of a word", "bed"), N_ ("What the board lies on while it is cut.") },
  { NC_ ("forms of a word", "spoilboard|spoilboards"),
    N_ ("A waste board under the work, which may be cut into.") },
  { NC_ ("forms of a word", "backer board|backer|backers"),
    N_ ("A piece of waste that is held against a face or an edge to back its fibres.") },
  { NC_ ("forms of a word", "tab|tabs"), N_ ("A bridge of wood that is left standing, so that the piece "
                                             "stays joined to the waste until the end.") },
  { NC_ ("forms of a word", "feed"), N_ ("How fast the bit is led along its line.") },
  { NC_ ("forms of a word", "chip thickness"),
    N_ ("How thick a chip each tooth takes off: the quicker the feed, the thicker, and the quicker the bit "
        "turns, the thinner.") },
  { NC_ ("forms of a word", "feed per tooth|chip load"),
    N_ ("How far the bit is led on from one tooth to the next.") },
  { NC_ ("forms of a word", "spindle"), N_ ("The shaft of the machine that turns the bit.") },
  { NC_ ("forms of a word", "spindle speed"), N_ ("How many turns the bit makes in a minute.") },
  { NC_ ("forms of a word", "collet|collets"),
    N_ ("The sleeve at the end of the spindle that grips the bit by its shank.") },
  { NC_ ("forms of a word", "shank|shanks"), N_ ("The smooth round end by which the bit is gripped.") },
  { NC_ ("forms of a word", "stick-out"), N_ ("How far the bit stands out of the collet.") },
  { NC_ ("forms of a word", "pass|passes"),
    N_ ("One of the goes in which a deep cut is made, each deeper than the last.") },
  { NC_ ("forms of a word", "flute|flutes"),
    N_ ("A hollow in the bit that carries the chips off; a sharp edge runs beside it.") },
  { NC_ ("forms of a word", "tooth or cutting edge|tooth|teeth|cutting edge|cutting edges"),
    N_ ("A sharp edge of the bit; each takes a chip as it comes round.") },
  { NC_ ("forms of a word", "up-cut bit|up-cut bits|up-cut"),
    N_ ("Its flutes wind so that it pulls toward the motor.") },
  { NC_ ("forms of a word", "down-cut bit|down-cut bits|down-cut"),
    N_ ("Its flutes wind so that it pushes away from the motor.") },
  { NC_ ("forms of a word", "compression bit|compression bits"),
    N_ ("Both in one: up-cut at its tip, down-cut above.") },
  { NC_ ("forms of a word", "straight bit|straight bits"),
    N_ ("Its flutes run straight up: it cuts sideways only.") },
  { NC_ ("forms of a word", "up-shear"), N_ ("The part of a bit that pulls toward the motor.") },
  { NC_ ("forms of a word", "down-shear"), N_ ("The part of a bit that pushes away from the motor.") },
  { NC_ ("forms of a word", "turn-over"),
    N_ ("The height on a compression bit at which the shear changes hand.") },
  { NC_ ("forms of a word", "face ply|face plies|face layer|face layers"),
    N_ ("The outermost layer of a board, often hardly thicker than card.") },
  { NC_ ("forms of a word", "show face|show faces"), N_ ("The face that is seen when the work is done.") },
  { NC_ ("forms of a word", "hidden face|hidden faces"),
    N_ ("The face that isn't seen when the work is done.") },
  { NC_ ("forms of a word", "motor side"), N_ ("The side toward the motor that turns the bit.") },
  { NC_ ("forms of a word", "far side"), N_ ("The side away from the motor.") },
  { NC_ ("forms of a word", "plywood"),
    N_ ("A board of thin layers of wood, glued crosswise on one another.") },
  { NC_ ("forms of a word", "MDF"),
    N_ ("A board of wood ground up fine and pressed, without plies or grain.") },
  { NC_ ("forms of a word", "particleboard"), N_ ("A board of wood chips, pressed with glue.") },
  { NC_ ("forms of a word", "melamine"), N_ ("A thin, hard skin on the faces of a board.") },
  { NC_ ("forms of a word", "veneer|veneered"), N_ ("A thin leaf of wood that is glued onto a board.") },
  { NC_ ("forms of a word", "grain"), N_ ("The way in which the fibres of the wood run.") },
  { NC_ ("forms of a word", "against the grain"),
    N_ ("So that the bit meets the fibres from behind, as when fur is stroked the wrong way.") },
  { NC_ ("forms of a word", "end grain"), N_ ("Wood where its fibres end, as on a stump.") },
  { NC_ ("forms of a word", "dado or groove|dado|dadoes|groove|grooves"),
    N_ ("A channel with a flat floor; strictly, a dado runs across the grain and a groove along it.") },
  { NC_ ("forms of a word", "rabbet|rabbets"), N_ ("A step along the edge of a board.") },
  { NC_ ("forms of a word", "pocket|pockets"), N_ ("A recess with a floor and with walls all round.") },
  { NC_ ("forms of a word", "mortise|mortises"),
    N_ ("A hole with straight sides, into which a tenon fits.") },
  { NC_ ("forms of a word", "slot|slots"), N_ ("A narrow cut that begins and ends within the board.") },
  { NC_ ("forms of a word", "outline|outlines"),
    N_ ("The cut right round a piece, which parts it from the board.") },
  { NC_ ("forms of a word", "edge trim"),
    N_ ("A cut that takes a little off the edge of a board to make it true.") },
  { NC_ ("forms of a word", "gantry"), N_ ("A machine that carries the router over the board on rails.") },
  { NC_ ("forms of a word", "router table"),
    N_ ("A table with a router under it; the board is pushed past the bit.") },
  { NC_ ("forms of a word", "hand-held router"),
    N_ ("A router that is led over the board with both hands.") },
  { NC_ ("forms of a word", "vacuum"),
    N_ ("Air is sucked away from under the work, and the air above presses it down.") },
  { NC_ ("forms of a word", "fence|fences"),
    N_ ("A straight edge on a router table, along which the board is pushed.") },
  { NC_ ("forms of a word", "straightedge"),
    N_ ("A straight bar clamped to the board, along which the router is led.") },
  { NC_ ("forms of a word", "climb"),
    N_ ("Led so that the teeth would pull the bit along: each chip begins thick and ends thin.") },
  { NC_ ("forms of a word", "conventional"),
    N_ ("Led so that the teeth push back against the feed: each chip begins thin and ends thick.") },
  { NC_ ("forms of a word", "overcut"),
    N_ ("How far the bit goes below the far face, so that nothing is left standing.") },
  { NC_ ("forms of a word", "plunge|plunges"), N_ ("To go straight down into the wood, as a drill does.") },
  { NC_ ("forms of a word", "ramp"), N_ ("To go down into the wood on a slope.") },
  { NC_ ("forms of a word", "fuzzy|fuzzy grain"), N_ ("Fine fibres stand up at the edge like felt.") },
  { NC_ ("forms of a word", "torn|torn grain|badly torn"),
    N_ ("Fibres have broken out of the board at the edge.") },
  { NC_ ("forms of a word", "nicked or chipped|nicked|nicks|chipped"),
    N_ ("Flakes have broken off at the edge: nicked is little, chipped is more.") },
};

guint
spelch_trade_words_count (void)
{
  return G_N_ELEMENTS (WORDS);
}

static const char *
forms_of (guint word)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "forms of a word", WORDS[word].forms);
}

char *
spelch_trade_word_name (guint word)
{
  const char *forms = word < G_N_ELEMENTS (WORDS) ? forms_of (word) : "";
  gsize length = strcspn (forms, "|*");
  return g_strndup (forms, length);
}

const char *
spelch_trade_word_meaning (guint word)
{
  return word < G_N_ELEMENTS (WORDS) ? _ (WORDS[word].meaning) : "";
}

/* ---- Finding ---- */

static bool
in_a_word (const char *at)
{
  return g_unichar_isalnum (g_utf8_get_char (at));
}

/* A small letter stands for a capital too, and a blank for any other, such as those that don't break. */
static bool
agrees (gunichar wanted, gunichar is)
{
  return wanted == is || wanted == g_unichar_tolower (is) || (wanted == ' ' && g_unichar_isspace (is));
}

/* How many bytes of @text the form from @form to @end stands for at its beginning; 0: none. */
static gsize
form_length (const char *form, const char *end, const char *text)
{
  bool any_ending = end > form && end[-1] == '*';
  const char *stop = any_ending ? end - 1 : end, *at = text;
  for (const char *f = form; f < stop; f = g_utf8_next_char (f))
    {
      if (*at == '\0' || !agrees (g_utf8_get_char (f), g_utf8_get_char (at)))
        return 0;
      at = g_utf8_next_char (at);
    }
  while (any_ending && in_a_word (at))
    at = g_utf8_next_char (at);
  return in_a_word (at) ? 0 : (gsize)(at - text);
}

/* The longest of @forms that @text begins with. */
static gsize
word_length (const char *forms, const char *text)
{
  gsize longest = 0;
  for (const char *form = forms; form != NULL;)
    {
      const char *bar = strchr (form, '|');
      longest = MAX (longest, form_length (form, bar == NULL ? form + strlen (form) : bar, text));
      form = bar == NULL ? NULL : bar + 1;
    }
  return longest;
}

/* Of each word, as the language has it: asked for once, since a text has many places where a word may begin.
 */
typedef const char *Forms[G_N_ELEMENTS (WORDS)];

/* The word with the longest form that begins at @text; its length, 0 where none does. */
static gsize
longest_word (const Forms forms, const char *text, guint *word)
{
  gsize longest = 0;
  for (guint i = 0; i < G_N_ELEMENTS (WORDS); i++)
    {
      gsize length = word_length (forms[i], text);
      if (length > longest)
        {
          longest = length;
          *word = i;
        }
    }
  return longest;
}

GArray *
spelch_trade_words_find (const char *text)
{
  GArray *mentions = g_array_new (FALSE, FALSE, sizeof (SpelchTradeMention));
  const char *at = text;
  Forms forms;
  for (guint i = 0; i < G_N_ELEMENTS (WORDS); i++)
    forms[i] = forms_of (i);
  while (*at != '\0')
    {
      SpelchTradeMention mention = { .from = (gsize)(at - text) };
      gsize length = longest_word (forms, at, &mention.word);
      mention.to = mention.from + length;
      if (length > 0)
        g_array_append_val (mentions, mention);
      at += length;
      while (length == 0 && in_a_word (at)) /* the rest of one that is none of them */
        at = g_utf8_next_char (at);
      while (*at != '\0' && !in_a_word (at))
        at = g_utf8_next_char (at);
    }
  return mentions;
}

GArray *
spelch_trade_words_in (const char *text)
{
  g_autoptr (GArray) mentions = spelch_trade_words_find (text);
  GArray *words = g_array_new (FALSE, FALSE, sizeof (guint));
  bool met[G_N_ELEMENTS (WORDS)] = { false };
  for (guint i = 0; i < mentions->len; i++)
    {
      guint word = g_array_index (mentions, SpelchTradeMention, i).word;
      if (!met[word])
        g_array_append_val (words, word);
      met[word] = true;
    }
  return words;
}
