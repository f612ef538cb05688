using System.Text.Json;

namespace AimTrainer.Output;

/// <summary>Property names of shots and figures, made ready once: a replay writes them a million times.</summary>
internal static class JsonNames
{
    public static JsonEncodedText Number { get; } = JsonEncodedText.Encode("number");

    public static JsonEncodedText Time { get; } = JsonEncodedText.Encode("time");

    public static JsonEncodedText Targets { get; } = JsonEncodedText.Encode("targets");

    public static JsonEncodedText Reasons { get; } = JsonEncodedText.Encode("reasons");

    public static JsonEncodedText NextWidthsBoards { get; } = JsonEncodedText.Encode("nextWidthsBoards");

    public static JsonEncodedText NextWidthsUncertain { get; } = JsonEncodedText.Encode("nextWidthsUncertain");

    public static JsonEncodedText LeftOutOfWidths { get; } = JsonEncodedText.Encode("leftOutOfWidths");

    public static JsonEncodedText LaunchAngle { get; } = JsonEncodedText.Encode("launchAngle");

    public static JsonEncodedText Degrees { get; } = JsonEncodedText.Encode("degrees");

    public static JsonEncodedText From { get; } = JsonEncodedText.Encode("from");

    public static JsonEncodedText AsFirstGraded { get; } = JsonEncodedText.Encode("asFirstGraded");

    public static JsonEncodedText Void { get; } = JsonEncodedText.Encode("void");

    public static JsonEncodedText Summary { get; } = JsonEncodedText.Encode("summary");

    public static JsonEncodedText PerTarget { get; } = JsonEncodedText.Encode("perTarget");

    public static JsonEncodedText Name { get; } = JsonEncodedText.Encode("name");

    public static JsonEncodedText Shots { get; } = JsonEncodedText.Encode("shots");

    public static JsonEncodedText Graded { get; } = JsonEncodedText.Encode("graded");

    public static JsonEncodedText Hits { get; } = JsonEncodedText.Encode("hits");

    public static JsonEncodedText Points { get; } = JsonEncodedText.Encode("points");

    public static JsonEncodedText Threshold { get; } = JsonEncodedText.Encode("threshold");

    public static JsonEncodedText Reversals { get; } = JsonEncodedText.Encode("reversals");

    public static JsonEncodedText DistanceFeet { get; } = JsonEncodedText.Encode("distanceFeet");

    public static JsonEncodedText CentreBoard { get; } = JsonEncodedText.Encode("centreBoard");

    public static JsonEncodedText WidthBoards { get; } = JsonEncodedText.Encode("widthBoards");

    public static JsonEncodedText Crossing { get; } = JsonEncodedText.Encode("crossing");

    public static JsonEncodedText Grade { get; } = JsonEncodedText.Encode("grade");

    public static JsonEncodedText Held { get; } = JsonEncodedText.Encode("held");

    public static JsonEncodedText Comparable { get; } = JsonEncodedText.Encode("comparable");

    public static JsonEncodedText HitRate { get; } = JsonEncodedText.Encode("hitRate");

    public static JsonEncodedText HitRateLow { get; } = JsonEncodedText.Encode("hitRateLow");

    public static JsonEncodedText HitRateHigh { get; } = JsonEncodedText.Encode("hitRateHigh");

    public static JsonEncodedText ConstantErrorBoards { get; } = JsonEncodedText.Encode("constantErrorBoards");

    public static JsonEncodedText VariableErrorBoards { get; } = JsonEncodedText.Encode("variableErrorBoards");

    public static JsonEncodedText AbsoluteErrorBoards { get; } = JsonEncodedText.Encode("absoluteErrorBoards");

    public static JsonEncodedText TotalErrorBoards { get; } = JsonEncodedText.Encode("totalErrorBoards");

    public static JsonEncodedText SpreadBoards { get; } = JsonEncodedText.Encode("spreadBoards");

    public static JsonEncodedText MinBoard { get; } = JsonEncodedText.Encode("minBoard");

    public static JsonEncodedText MaxBoard { get; } = JsonEncodedText.Encode("maxBoard");

    public static JsonEncodedText CrossingBoard { get; } = JsonEncodedText.Encode("crossingBoard");

    public static JsonEncodedText MissBoards { get; } = JsonEncodedText.Encode("missBoards");
}
