/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-private.h - parts of the window that its files share */
#pragma once

#include "app/window/fm-sidebar.h"
#include "app/window/fm-window.h"

G_BEGIN_DECLS

struct _FmWindow {
  AdwApplicationWindow parent_instance;

  AdwToastOverlay *toast_overlay;
  AdwLeaflet *leaflet;
  FmSidebar *sidebar;
  AdwViewSwitcherTitle *switcher_title;
  GtkLabel *shown_label;
  GtkLabel *notice_label; /* what the notebook says of itself */
  GtkToggleButton *nutrition_button;
  AdwHeaderBar *header;
  AdwViewSwitcherBar *switcher_bar;
  GtkButton *undo_button;
  GtkButton *redo_button;
  GtkMenuButton *menu_button;
  GMenuModel *primary_menu;
  GMenu *recent_menu;
  GtkRevealer *busy_revealer;
  GtkSpinner *busy_spinner;
  GtkLabel *busy_label;
  GtkRevealer *failure_revealer;
  GtkLabel *failure_label;
  gboolean failure_is_of_saving; /* what the bar says is over once all is saved */
  GtkRevealer *place_revealer;
  GtkLabel *place_label;
  GtkButton *place_follow_button;
  GtkRevealer *frozen_revealer;
  GtkLabel *frozen_label;
  GtkButton *frozen_draft_button;
  GtkButton *frozen_branch_button;
  AdwFlap *flap;
  GtkStack *content_stack;
  AdwViewStack *stack;
  gboolean begins; /* a blend was just made and is not shown yet */

  GSignalGroup *page_signals;     /* of the page that is shown */
  GSignalGroup *document_signals; /* of what is edited on it */

  FmSession *session;
  GCancellable *busy; /* of the work under way, NULL = none */
  guint busy_delay_id;
  GtkFileChooserNative *chooser;
  GCancellable *backing_up; /* of the backup of today; NULL = none was begun */
  gboolean loading;         /* the first notebook is being opened */
  gboolean is_first_start;  /* no notebook was ever opened here */
  gboolean gives_up;        /* the user was asked and goes on */
};

/* fm-window-open.c */
void fm_window_install_open_actions (GtkWidgetClass *klass);
/* fm-window-files.c */
/** The path of what the program keeps for itself as @name. (transfer full) */
char *fm_window_own_path (const char *name);
/**
 * Where the notebook of somebody new lies: among the documents; with the program's own data where
 * there is no such folder, or where an earlier program made it there. (transfer full)
 */
char *fm_window_first_path (void);
/** Puts @path at the head of the recent notebooks and makes it the one to open next time. */
void fm_window_remember (const char *path);
/** Leaves @path out of the recent notebooks. */
void fm_window_forget (const char *path);
/** Fills the menu with the notebooks that this program opened lately, the latest first. */
void fm_window_update_recent (FmWindow *self);
/** The path of @file; NULL when it has none on this computer, which is told. (transfer full) */
char *fm_window_find_path (FmWindow *self, GFile *file);
/** Lets notebooks be dropped on the window. */
void fm_window_accept_files (FmWindow *self);
/* fm-window-start.c */
/** Fills the page that stands for a missing notebook, which @builder has read. */
void fm_window_fill_start (FmWindow *self, GtkBuilder *builder);
/* fm-window-undo.c */
void fm_window_init_undo (FmWindow *self);
void fm_window_install_undo_actions (GtkWidgetClass *klass);
/** Another page is shown, or it is built now. */
void fm_window_watch_page (FmWindow *self);
/* fm-window-place.c */
void fm_window_update_place (FmWindow *self);
/** What became of the file of the notebook. (transfer full); NULL when nothing did */
char *fm_window_describe_place (FmWindow *self);
/* fm-window-search.c */
void fm_window_install_search_action (GtkWidgetClass *klass);
/* fm-window-blends.c */
void fm_window_install_blend_actions (GtkWidgetClass *klass);
/* fm-window-pages.c */
void fm_window_bind_pages (GtkWidgetClass *klass);
void fm_window_install_page_actions (GtkWidgetClass *klass);
void fm_window_defer_menu (FmWindow *self);
/** Puts the cursor where a blend that was just made begins. */
void fm_window_begin_blend (FmWindow *self);
/* fm-window-busy.c */
void fm_window_begin_busy (FmWindow *self, const char *text, GCancellable *cancellable);
void fm_window_end_busy (FmWindow *self);
void fm_window_cancel_busy (FmWindow *self);
void fm_window_set_enabled (FmWindow *self, const char *action, gboolean enabled);
void fm_window_update_switcher (FmWindow *self);
void fm_window_update_content (FmWindow *self);
/* fm-window-leave.c */
typedef void (*FmWindowFunc) (FmWindow *self, gpointer data);
/** Saves what waits, and answers whether something is neither saved nor in a copy. */
gboolean fm_window_would_lose (FmWindow *self);
/** Names what is not saved. @go_on runs when the user gives it up. */
void fm_window_ask_before_loss (FmWindow *self,
                                const char *leave_label,
                                FmWindowFunc go_on,
                                gpointer data,
                                GDestroyNotify free_data);

/* fm-window-backup.c */
/** Keeps a backup of today in a thread. */
void fm_window_begin_backup (FmWindow *self, FmNotebook *notebook);
void fm_window_end_backup (FmWindow *self);
void fm_window_install_backup_action (GtkWidgetClass *klass);

/* fm-window-damage.c */
/** Asks whether to recover the damaged notebook @path. */
void fm_window_offer_recovery (FmWindow *self, const char *path, const char *reason);
/** Says what was taken into the notebook @path and what was lost. */
void fm_window_tell_recovered (FmWindow *self, const char *path, const char *report);

G_END_DECLS
