using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>
/// What one coaching guide says of the whole left-right spread of ten shots at the arrows. A reference to hold a spread against, never a verdict.
/// </summary>
/// <remarks>Source: US Bowler (USBC), July 2012, content.yudu.com/A1xc7b/USB0712: ten shots over a mark at the arrows.</remarks>
/// <param name="Words">Who is said to spread so far.</param>
/// <param name="UpToBoards">The widest spread of the band, in boards.</param>
public sealed record PublishedSpreadBand(string Words, double UpToBoards)
{
    // The zone in which the arrows lie, feet.
    private const double NearestArrow = 12;
    private const double FarthestArrow = 16;

    /// <summary>What must be said beside a band.</summary>
    public static ValueList<string> Caveats { get; } =
    [
        "from one coaching guide that names no sample; a reference, not a verdict",
        "for exactly ten shots: a spread grows with the number of shots",
        "the guide measures from outer edge to outer edge of the tracks, here it is from ball centre to ball centre",
        "the guide takes an inch for a board; here its 1.5 inches are worked out for this lane",
    ];

    /// <summary>The bands on a lane, tightest first.</summary>
    public static ValueList<PublishedSpreadBand> On(LaneProfile lane) =>
    [
        new("elite: under 1.5 inches", 1.5 / lane.BoardWidth.Value),
        new("averages of 220 and more: 2 boards", 2),
        new("averages of 200 and more: 3 boards", 3),
        new("averages of 180 and more: 4 boards", 4),
        new("averages of 160 and more: 4.5 boards", 4.5),
    ];

    /// <summary>The tightest band that a spread of ten shots at the arrows keeps within; null when it is wider than all, or not at the arrows.</summary>
    public static PublishedSpreadBand? Of(double spreadBoards, Feet distance, LaneProfile lane)
    {
        if (!AtTheArrows(distance))
        {
            return null;
        }

        var bands = On(lane);
        for (var i = 0; i < bands.Count; i++)
        {
            // The tightest is "under", the others are reached.
            if (i == 0 ? spreadBoards < bands[i].UpToBoards : spreadBoards <= bands[i].UpToBoards)
            {
                return bands[i];
            }
        }

        return null;
    }

    /// <summary>Whether the bands say anything of a distance.</summary>
    public static bool AtTheArrows(Feet distance) => distance.Value is >= NearestArrow and <= FarthestArrow;
}
