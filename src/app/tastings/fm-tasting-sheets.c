/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sheets.c - the tasters' sheets: what each found of the codes on the cups */
#include "app/tastings/fm-tasting-sheets.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/session/fm-clock.h"
#include "app/tastings/fm-tasting-sheet-form.h"
#include "app/tastings/fm-tasting-sheet-tools.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

#define TASTER_HEIGHT_PX 37
#define MAX_TASTERS_SHOWN 6

struct _FmTastingSheets {
  GtkWidget parent_instance;

  GtkWidget *box;
  FmTastingSheetTools *tools;
  GtkScrolledWindow *scroller;
  GtkListBox *taster_list;
  GtkLabel *taster_label;
  FmTastingSheetForm *form;
  GtkLabel *gaps_label;
  GtkWidget *actions;
  GtkWidget *in_button;
  GtkWidget *missing_button;
  GtkWidget *dropped_button;
  GtkWidget *waited_button;
  GtkWidget *next_button;

  FmTastingDocument *document;
  guint taster;
};

G_DEFINE_FINAL_TYPE (FmTastingSheets, fm_tasting_sheets, GTK_TYPE_WIDGET)

static FmTasting *
get_tasting (FmTastingSheets *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

static const FmTaster *
get_taster (FmTastingSheets *self, guint index)
{
  return g_ptr_array_index (get_tasting (self)->tasters, index);
}

/* "Ana – waited for" */
static char *
get_taster_text (FmTastingSheets *self, guint index)
{
  const FmTaster *taster = get_taster (self, index);

  /* Translators: name of a taster, "waited for" */
  return g_strdup_printf (_ ("%s – %s"), taster->name, fm_tasting_sheet_word (taster->sheet));
}

static void
show_states (FmTastingSheets *self)
{
  for (guint i = 0; i < get_tasting (self)->tasters->len; i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->taster_list, (int)i);
    g_autofree char *text = get_taster_text (self, i);

    if (row == NULL)
      return;
    fm_widget_set_label (GTK_LABEL (gtk_list_box_row_get_child (row)), text);
    gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  }
}

static void
show_gaps (FmTastingSheets *self)
{
  g_autofree char *gaps = fm_tasting_sheet_gaps (get_tasting (self), self->taster);
  g_autofree char *text = gaps != NULL ? g_strdup_printf (_ ("Not filled in yet: %s."), gaps)
                                       : g_strdup (_ ("This sheet is whole."));

  fm_widget_set_label (self->gaps_label, text);
}

static void
show_actions (FmTastingSheets *self)
{
  const FmSheetState state = get_taster (self, self->taster)->sheet;
  const guint n = get_tasting (self)->tasters->len;

  gtk_widget_set_sensitive (self->actions, fm_tasting_document_is_editable (self->document));
  gtk_widget_set_sensitive (self->in_button, state != FM_SHEET_IN);
  gtk_widget_set_sensitive (self->missing_button, state != FM_SHEET_MISSING);
  gtk_widget_set_sensitive (self->dropped_button, state != FM_SHEET_DROPPED_OUT);
  gtk_widget_set_sensitive (self->waited_button, state != FM_SHEET_WAITED_FOR);
  gtk_widget_set_sensitive (self->next_button, n > 1);
}

static void
refresh (FmTastingSheets *self)
{
  g_autofree char *heading = g_strdup_printf (
      /* Translators: name of a taster, "waited for" */
      _ ("Sheet of %s: %s"), get_taster (self, self->taster)->name,
      fm_tasting_sheet_word (get_taster (self, self->taster)->sheet));

  fm_widget_set_label (self->taster_label, heading);
  show_states (self);
  show_gaps (self);
  show_actions (self);
}

static void
show_taster (FmTastingSheets *self, guint taster)
{
  self->taster = taster;
  fm_tasting_sheet_form_show (self->form, self->document, taster);
  refresh (self);
}

static void
choose_taster (FmTastingSheets *self, guint taster)
{
  gtk_list_box_select_row (self->taster_list,
                           gtk_list_box_get_row_at_index (self->taster_list, (int)taster));
}

static void
set_sheet (FmTastingSheets *self, FmSheetState state)
{
  fm_tasting_set_sheet (get_tasting (self), fm_clock_now_s (), self->taster, state);
  fm_tasting_document_touch (self->document);
}

/* The next one waited for, else simply the next one, round and round. */
static guint
find_next (FmTastingSheets *self)
{
  const guint n = get_tasting (self)->tasters->len;

  for (guint i = 1; i < n; i++)
    if (get_taster (self, (self->taster + i) % n)->sheet == FM_SHEET_WAITED_FOR)
      return (self->taster + i) % n;
  return (self->taster + 1) % n;
}

static GtkWidget *
new_dialog (FmTastingSheets *self, const char *heading, const char *body)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  return adw_message_dialog_new (GTK_WINDOW (root), heading, body);
}

static void
gaps_answered_cb (FmTastingSheets *self, const char *response)
{
  if (g_str_equal (response, "take") && self->document != NULL)
    set_sheet (self, FM_SHEET_IN);
}

static void
ask_about_gaps (FmTastingSheets *self, const char *gaps)
{
  g_autofree char *body = g_strdup_printf (
      _ ("Not filled in: %s. What is not filled in is not counted as anything."), gaps);
  GtkWidget *dialog = new_dialog (self, _ ("Take the Sheet with Gaps?"), body);

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Keep Waiting"),
                                    "take", _ ("_Take with Gaps"), NULL);
  g_signal_connect_object (dialog, "response", G_CALLBACK (gaps_answered_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
say_trouble (FmTastingSheets *self, const char *trouble)
{
  GtkWidget *dialog = new_dialog (self, _ ("A Field Holds No Mark"), trouble);

  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
in_clicked_cb (FmTastingSheets *self)
{
  g_autofree char *trouble = fm_tasting_sheet_form_get_trouble (self->form);
  g_autofree char *gaps = fm_tasting_sheet_gaps (get_tasting (self), self->taster);

  if (trouble != NULL) {
    say_trouble (self, trouble);
  } else if (gaps != NULL) {
    ask_about_gaps (self, gaps);
  } else {
    set_sheet (self, FM_SHEET_IN);
    gtk_widget_grab_focus (self->next_button);
  }
}

static void
missing_clicked_cb (FmTastingSheets *self)
{
  set_sheet (self, FM_SHEET_MISSING);
}

static void
dropped_clicked_cb (FmTastingSheets *self)
{
  set_sheet (self, FM_SHEET_DROPPED_OUT);
}

static void
waited_clicked_cb (FmTastingSheets *self)
{
  set_sheet (self, FM_SHEET_WAITED_FOR);
}

static void
next_clicked_cb (FmTastingSheets *self)
{
  choose_taster (self, find_next (self));
  fm_tasting_sheet_form_focus (self->form);
}

static void
taster_chosen_cb (FmTastingSheets *self, GtkListBoxRow *row)
{
  if (row != NULL && self->document != NULL)
    show_taster (self, (guint)gtk_list_box_row_get_index (row));
}

static void
add_tasters (FmTastingSheets *self)
{
  const guint n = get_tasting (self)->tasters->len;

  gtk_scrolled_window_set_min_content_height (self->scroller,
                                              (int)MIN (n, MAX_TASTERS_SHOWN) * TASTER_HEIGHT_PX);
  for (guint i = 0; i < n; i++) {
    GtkWidget *label = gtk_label_new (NULL);

    gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
    gtk_label_set_wrap (GTK_LABEL (label), TRUE);
    gtk_widget_set_margin_top (label, 8);
    gtk_widget_set_margin_bottom (label, 8);
    gtk_widget_set_margin_start (label, 12);
    gtk_list_box_append (self->taster_list, label);
  }
}

static void
leave_document (FmTastingSheets *self)
{
  GtkListBoxRow *row;

  if (self->document == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->document, self);
  fm_tasting_sheet_tools_set_document (self->tools, NULL);
  fm_tasting_sheet_form_show (self->form, NULL, 0);
  g_clear_object (&self->document);
  while ((row = gtk_list_box_get_row_at_index (self->taster_list, 0)) != NULL)
    gtk_list_box_remove (self->taster_list, GTK_WIDGET (row));
}

static void
fm_tasting_sheets_dispose (GObject *object)
{
  leave_document (FM_TASTING_SHEETS (object));
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TASTING_SHEETS);
  G_OBJECT_CLASS (fm_tasting_sheets_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, tools);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, taster_list);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, taster_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, form);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, gaps_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, actions);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, in_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, missing_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, dropped_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, waited_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheets, next_button);
  gtk_widget_class_bind_template_callback (widget_class, taster_chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, in_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, missing_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, dropped_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, waited_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, next_clicked_cb);
}

static void
fm_tasting_sheets_class_init (FmTastingSheetsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_sheets_dispose;
  g_type_ensure (FM_TYPE_TASTING_SHEET_FORM);
  g_type_ensure (FM_TYPE_TASTING_SHEET_TOOLS);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-sheets.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_template (widget_class);
}

static void
fm_tasting_sheets_init (FmTastingSheets *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_sheets_set_document (FmTastingSheets *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_SHEETS (self));
  if (document == self->document)
    return;
  leave_document (self);
  if (document == NULL || fm_tasting_document_get_tasting (document)->tasters->len == 0)
    return;
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  fm_tasting_sheet_tools_set_document (self->tools, document);
  add_tasters (self);
  choose_taster (self, 0);
}
