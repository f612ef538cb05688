using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>A bowler on a lane and what the coach should know.</summary>
/// <param name="Station">The lane.</param>
/// <param name="SessionId">The session.</param>
/// <param name="Bowler">Who throws.</param>
/// <param name="DrillName">At what.</param>
/// <param name="Shots">Shots that count so far.</param>
/// <param name="HasTurn">Whether the next shot is this bowler's.</param>
/// <param name="Reasons">Why the bowler may need the coach, the most pressing first.</param>
/// <param name="Words">The same in words, with figures; what is unknown is said to be.</param>
/// <param name="SpreadRatio">Late spread / early spread.</param>
public sealed record LaneNeed(
    int Station, string SessionId, string Bowler, string DrillName, int Shots, bool HasTurn, ValueList<NeedKind> Reasons, ValueList<string> Words, BoundedEstimate SpreadRatio);
