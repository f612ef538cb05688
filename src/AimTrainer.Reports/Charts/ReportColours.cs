namespace AimTrainer.Reports;

/// <summary>
/// The colours of reports. Blue and orange are told apart by people who do not tell red from green; whatever has a meaning also differs
/// in shape or line, since in grey print they are nearly alike.
/// </summary>
internal static class ReportColours
{
    /// <summary>Text and axes.</summary>
    public const string Ink = "#1d2935";

    /// <summary>Text of less weight. Contrast on white 5.7 to 1.</summary>
    public const string Quiet = "#5a6672";

    /// <summary>Rules and grids.</summary>
    public const string Rule = "#d5dbe1";

    /// <summary>Panels.</summary>
    public const string Panel = "#f3f6f8";

    /// <summary>What was thrown, held.</summary>
    public const string Blue = "#1c5d8c";

    /// <summary>What was thrown, missed; what to work on.</summary>
    public const string Orange = "#b85a12";

    /// <summary>The lane.</summary>
    public const string Lane = "#f7efe2";
}
