using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>Where to aim, and what to practise.</summary>
/// <param name="Best">The best line, thrown anew with other numbers of chance than those that chose it.</param>
/// <param name="ChanceError">Standard error of its chance from counting.</param>
/// <param name="LowChance">Chance on the worse lanes that it may be (one in twenty is worse); the chance itself where the lane is taken as exact.</param>
/// <param name="HighChance">Chance on the better ones.</param>
/// <param name="ArrowsBoard">Where the ball that is meant crosses the arrows, on the likeliest lane.</param>
/// <param name="DownlaneBoard">Where it crosses the downlane target's distance; not a number when it does not get there.</param>
/// <param name="Meant">What its path comes to.</param>
/// <param name="Room">How far off it may be; null when it does not reach the window itself.</param>
/// <param name="Worths">What halving each spread would add, in the order of the parts.</param>
/// <param name="Practise">The part whose halving adds most; null when none adds more than twice its error.</param>
/// <param name="Map">Every line of the grid.</param>
/// <param name="Lanes">On how many lanes that it may be.</param>
/// <param name="ReachesWindow">Whether any line reaches the window in more than one throw of a hundred.</param>
public sealed record AimAdvice(
    AimChance Best,
    double ChanceError,
    double LowChance,
    double HighChance,
    double ArrowsBoard,
    double DownlaneBoard,
    PathEnd Meant,
    RoomForError? Room,
    ValueList<SpreadWorth> Worths,
    ScatterPart? Practise,
    ValueList<AimChance> Map,
    int Lanes,
    bool ReachesWindow);
