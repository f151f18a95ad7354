//! What a person can do on a screen, beyond following a link: each act is one of these, and buttons carry them.

use super::face::Face;
use super::route::Place;
use crate::book::{Own, Way};

/// Something a person does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Act {
    /// Types a text into a field, by name.
    Type(String, String),
    /// Makes a choice, by the name of its field; it may bring other fields.
    Choose(String, String),
    /// Puts texts in fields, at a tap; Undo brings back what stood there.
    Put(Vec<(&'static str, String)>),
    /// Puts the second line in place of the first, where that stands.
    Rewrite(String, String),
    /// Empties the tool, deletes the record that is open, or puts the import away.
    Empty,
    /// Takes back the last change of what is on the screen.
    Undo,
    /// Does again what was taken back last.
    Redo,
    /// Takes back the deed of this number; true when it has been said what was changed since.
    UndoDeed(u32, bool),
    /// Copies the answer.
    Copy,
    /// Makes a field the one that the pad types into; none puts the pad away.
    Activate(Option<String>),
    /// Shows the pad's other units, and its digits again.
    Turn,
    /// Goes on to the next number; after the last to the first.
    Next,
    /// Brings the pad up where it waits behind its word.
    Pad,
    /// Opens the sheet of tools of a place; where that is open, goes to the tool used there last. None closes it.
    Sheet(Option<Place>),
    /// Puts the notice away.
    Dismiss,
    /// Goes to the first row that needs a look.
    Look,
    /// Goes to an address of the app; drawn as a link.
    Go(String),
    /// Takes the new version that waits.
    Update,
    /// Leaves it for the next start.
    UpdateLater,
    /// Asks the browser to install the app.
    Install,

    /// Starts a spec; from a tool with a spec in it, that comes along.
    NewSpec,
    /// Starts an ingredient.
    NewIngredient,
    /// Keeps what was made as an ingredient of the bar's own.
    KeepIngredient(Box<Own>),
    /// Keeps the answer as a form of the spec that it came from; of none, as a spec.
    AsForm(Box<Way>),
    /// Works the form that is open out anew, from what it was made from as that is now.
    WorkOut,
    /// Goes to the tool that made it, filled in as it was.
    OpenTool,
    /// Leaves it as it is, though what it was made from has changed.
    LeaveForm,
    /// Starts a run sheet.
    NewRun,
    /// Copies the spec that is open.
    Duplicate,
    /// Adds a form to it.
    AddWay,
    /// Takes the form that is open away.
    RemoveWay,
    /// Keeps what is typed of how the form that is open tastes.
    Taste,
    /// Makes it as it was when it was tasted: which time, from 0.
    BringBack(usize),
    /// Takes a tasting away: which, from 0.
    DropTasting(usize),
    /// Keeps the version that is open and takes the others away.
    KeepThis,
    /// Keeps all versions, each for itself.
    KeepAll,
    /// Puts the demo in the book.
    Demo,
    /// Takes it away.
    RemoveDemo,
    /// Takes what is new from an import.
    TakeNew,
    /// Takes what is new or different.
    TakeAll,
    /// Takes what is new, and what differs beside what is there.
    TakeBoth,
    /// Takes the settings of an import.
    TakeSettings,
    /// Takes what an import has typed in its tools.
    TakeTools,
    /// Shows more of a list.
    More,
    /// Keeps yields on the shelf: all of them, a line each.
    KeepYield(String),
    /// Keeps prices on the shelf: all of them, a line each.
    KeepPrice(String),
    /// Keeps how fast drinks chill on the shelf: in the text of this name, these seconds.
    KeepPace(&'static str, String),

    /// Gives a backup of everything.
    Backup,
    /// Gives what could not be read.
    GiveUnread,
    /// Gives what is set aside.
    GiveAside,
    /// Gives what could not be saved.
    GiveUnsaved,
    /// Asks for a file to import.
    ChooseFile,
    /// Takes an import from the clipboard.
    Paste,
    /// Puts an import away.
    PutAway,
    /// Makes a link of the spec that is open.
    Share,
    /// Copies that link.
    CopyLink,
    /// Gives the spec as plain text.
    Text,
    /// Gives the spec as a schema.org recipe.
    Recipe,
    /// Gives the table of the screen as CSV.
    Csv,
    /// Prints the label.
    Print,
    /// Gives the label as a picture.
    Picture,

    /// Shows the spec that is open so.
    Show(Face),
    /// Ticks a line of it, by its number, as it was typed; a ticked one is unticked.
    TickLine(usize, String),
    /// Unticks all its lines.
    UntickLines,
    /// Makes it for so many.
    Serves(u32),
    /// Begins the wait of a step of it, as that was written: so many seconds.
    Begin(String, u32),
    /// Ends it.
    End(String),

    /// Puts what the screen makes on the run sheet that is open, or on a new one.
    ToRun,
    /// Shows all run sheets.
    AllRuns,
    /// Puts it there once more.
    ToRunAgain,
    /// Makes a step the one that strip and buttons speak of.
    OpenStep(String),
    /// Lengthens the wait of a step by some minutes.
    Longer(String),
    /// Starts the wait of a step, and readies the bell.
    Start(String),
    /// Ticks a step off.
    Tick(String),
    /// Takes the tick off a step, or stops its wait.
    Untick(String),
    /// Finishes the run, and keeps it in the log; asks where steps are open.
    Finish,
    /// Finishes it with open steps.
    FinishOpen,
    /// Deletes the record that is open where there is no room to take that back.
    DeleteForGood,
    /// Takes it out of the log again.
    Reopen,
    /// Has a part made of another, the next that it can be made of; after the last, of its own amount.
    MadeOf(u32),
    /// Takes a part out.
    TakeOut(u32),
}
