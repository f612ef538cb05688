using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Display;

/// <summary>How displays say things to bowlers.</summary>
internal static class SceneWords
{
    /// <summary>As drills say it: not said again beside <see cref="FoulLineShort"/>.</summary>
    public const string NobodyPastTheFoulLine =
        "Nobody walks past the foul line to place, check or measure a target: the lane beyond it is oiled and slippery.";

    public const string FoulLineShort = "Nobody walks past the foul line: the lane is oiled and slippery.";

    public const string NobodyIntoTheBeam = "Nobody looks into the projector's beam.";

    public const string HowArmFeels = "How do hand, wrist and arm feel? Sore: say so before the first shot. Stop when it hurts.";

    /// <summary>"left" or "right" as the bowler sees it, of a side that is 1 inside or -1 outside.</summary>
    public static string Side(int side, Hand hand) => side > 0 == (hand == Hand.Right) ? "left" : "right";

    /// <summary>"1.30 left", or "on centre".</summary>
    public static string Miss(BoardOffset miss, Hand hand) =>
        IsOnCentre(miss) ? "on centre" : $"{TwoPlaces(miss)} {Side(Math.Sign(miss.Boards), hand)}";

    /// <summary>Whether a miss reads 0.00.</summary>
    public static bool IsOnCentre(BoardOffset miss) => TwoPlaces(miss) == "0.00";

    /// <summary>The size of a miss to two decimals, without its side.</summary>
    public static string TwoPlaces(BoardOffset miss) => miss.Abs().Boards.ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>The size of a miss to one decimal, where there is no room for two.</summary>
    public static string OnePlace(BoardOffset miss) => miss.Abs().Boards.ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>"1 board", "2.5 boards".</summary>
    public static string Boards(BoardOffset width) => $"{Short(width.Boards)} {(width.Boards == 1 ? "board" : "boards")}";

    /// <summary>A number to two decimals, without needless zeros.</summary>
    public static string Short(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A whole number.</summary>
    public static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A share in whole per cent, without the sign.</summary>
    public static string Percent(double share) => (share * 100).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>Until when a result is withheld.</summary>
    public static string WithheldUntil(Feedback feedback) => feedback.When switch
    {
        FeedbackWhen.Summary summary => $"until {Whole(summary.Shots)} shots are in",
        FeedbackWhen.Fading => "until a later shot is told",
        _ => "until your coach tells",
    };

    /// <summary>What the bowler is to do: "Throw shot 5 at the target".</summary>
    public static string Throw(int number, bool line) => line ? $"Throw shot {Whole(number)} through every target" : $"Throw shot {Whole(number)} at the target";
}
