using AimTrainer.Analysis;

namespace AimTrainer.Store.Postgres;

/// <summary>
/// What came of a program: which of its sessions were thrown, which goals were reached, and how the first retention test compares with the
/// last. By the rules of the program's own pages (docs/programs.md): only test blocks count.
/// </summary>
/// <param name="ProgramId">The program.</param>
/// <param name="Groups">Groups that began it in the period.</param>
/// <param name="Joined">Who joined them, also those who never threw.</param>
/// <param name="People">Those of them with a session here; of one person several groups count once, by the first.</param>
/// <param name="Done">Planned sessions that were thrown in their week.</param>
/// <param name="MadeUp">Those made up later, within the program's rule.</param>
/// <param name="Missed">Those that were not thrown, and are too late now.</param>
/// <param name="Open">Those that are still open, or to come.</param>
/// <param name="Complete">People who did or made up every session.</param>
/// <param name="DoneShare">Of the sessions that are no longer open the part done or made up, averaged over people, with Student's limits over people: sessions of one person are not independent of each other.</param>
/// <param name="GoalsReached">Goals of thrown sessions whose lower limit is at the goal or above.</param>
/// <param name="GoalsNotYet">Those whose upper limit is below it.</param>
/// <param name="GoalsCannotTell">Those in between.</param>
/// <param name="GoalsNotKnown">Those without a known crossing.</param>
/// <param name="Tested">People who threw two retention tests or more with the same drill.</param>
/// <param name="FirstMissBoards">Mean size of the miss in the first test of each one's, averaged over people.</param>
/// <param name="LastMissBoards">In the last of the same drill.</param>
/// <param name="ChangeBoards">Last less first, averaged over people, with Student's limits; below 0 is more accurate. Unknown below <see cref="DrillOutcome.Fewest"/> people.</param>
/// <param name="Better">The part of those people whose last was smaller, with Wilson's limits.</param>
public sealed record ProgramOutcome(
    string ProgramId,
    int Groups,
    int Joined,
    int People,
    int Done,
    int MadeUp,
    int Missed,
    int Open,
    int Complete,
    BoundedEstimate DoneShare,
    int GoalsReached,
    int GoalsNotYet,
    int GoalsCannotTell,
    int GoalsNotKnown,
    int Tested,
    double? FirstMissBoards,
    double? LastMissBoards,
    BoundedEstimate ChangeBoards,
    BoundedEstimate Better);
