using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>What the shots of one run of a block at one target, with one ball, add up to: shots that count only.</summary>
/// <param name="SessionId">The session.</param>
/// <param name="StartedAt">When the session was set up.</param>
/// <param name="Run">The run of the block in its session, from 0.</param>
/// <param name="BlockName">The block; null when it is not known.</param>
/// <param name="Kind">What the block is for; null when that is not known.</param>
/// <param name="Ball">The ball; null when it is not known.</param>
/// <param name="Target">The target's name.</param>
/// <param name="DistanceFeet">Its distance.</param>
/// <param name="Shots">Shots thrown at it.</param>
/// <param name="Graded">Those whose crossing is known; the sums are of these.</param>
/// <param name="Held">Those that held it.</param>
/// <param name="SumOfMisses">Σ miss, boards, positive inside.</param>
/// <param name="SumOfSizes">Σ |miss|, boards.</param>
/// <param name="SumOfSquares">Σ miss², square boards.</param>
/// <param name="LowestBoard">Lowest crossing; null when none is known.</param>
/// <param name="HighestBoard">Highest crossing; null when none is known.</param>
/// <param name="WholeBoards">Crossings that are a whole number of boards.</param>
public sealed record PracticeBlock(
    string SessionId,
    DateTimeOffset StartedAt,
    int Run,
    string? BlockName,
    BlockKind? Kind,
    string? Ball,
    string Target,
    double DistanceFeet,
    int Shots,
    int Graded,
    int Held,
    double SumOfMisses,
    double SumOfSizes,
    double SumOfSquares,
    double? LowestBoard,
    double? HighestBoard,
    int WholeBoards);
