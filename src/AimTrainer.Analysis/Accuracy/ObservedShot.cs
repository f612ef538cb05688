using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>A shot, what it was thrown at, and where it belongs. Shots come in the order in which they were thrown.</summary>
/// <param name="Shot">What was observed.</param>
/// <param name="Targets">Its targets, nearest first: one, or those of a line.</param>
public sealed record ObservedShot(Shot Shot, ValueList<ObservedTarget> Targets)
{
    /// <summary>The session; null when nobody says.</summary>
    public string? Session { get; init; }

    /// <summary>The drill; null when nobody says.</summary>
    public string? Drill { get; init; }

    /// <summary>The block; null when nobody says.</summary>
    public string? Block { get; init; }

    /// <summary>The ball; null when nobody says.</summary>
    public string? Ball { get; init; }

    /// <summary>Its number within its session, from 1.</summary>
    public required int NumberInSession { get; init; }

    /// <summary>What it was thrown at, by places: shots of one line are compared with each other, whatever the line is called.</summary>
    public string Line => string.Join(" to ", Targets.Select(target => $"{target.Centre}@{target.Distance}"));

    /// <summary>Whether every target was held; no when any was missed; null when that is unknown.</summary>
    public bool? Held
    {
        get
        {
            var known = true;
            foreach (var target in Targets)
            {
                if (target.Held == false)
                {
                    return false;
                }

                known &= target.Held is not null;
            }

            return known ? true : null;
        }
    }

    /// <summary>A shot of a session.</summary>
    /// <param name="graded">The shot as it was graded.</param>
    /// <param name="setup">Its session.</param>
    /// <param name="block">The name of its block.</param>
    /// <param name="number">Its number within the session, from 1, void shots left out.</param>
    public static ObservedShot Of(GradedShot graded, SessionSetup setup, string block, int number) =>
        new(graded.Shot, graded.Targets.Select(ObservedTarget.Of).ToValueList())
        {
            Session = setup.SessionId,
            Drill = setup.DrillId,
            Block = block,
            Ball = graded.Compared?.Ball ?? graded.Shot.Ball ?? setup.Ball,
            NumberInSession = number,
        };
}
