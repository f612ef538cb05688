namespace AimTrainer.Domain.Tests;

/// <summary>Comparisons for tests: two lines, and an old ball and a new one.</summary>
internal static class ComparisonPlay
{
    public const string TwoLines =
        """
        { "name": "outside", "line": [
          { "name": "near", "board": 10, "feet": 15, "widthBoards": 3 }, { "name": "far", "board": 6, "feet": 42, "widthBoards": 5 }] },
        { "name": "inside", "line": [
          { "name": "near two", "board": 20, "feet": 15, "widthBoards": 3 }, { "name": "far two", "board": 9, "feet": 42, "widthBoards": 5 }] }
        """;

    public static SessionSetup Setup { get; } = Play.Setup with { Balls = [new ChosenBall("reference", "Old one"), new ChosenBall("other", "New one")] };

    /// <summary>A comparison block: its aims, its order after the balls, and what else it has.</summary>
    public static string Block(string aims, string order, string rest = "", string balls = """ "reference", "other" """) =>
        $$"""{ "name": "compared", "kind": "comparison", "aims": [{{aims}}], "order": { "kind": "compare", "balls": [{{balls}}], {{order}} }{{rest}} }""";

    public static Play Begun(string order, string aims = TwoLines, string rest = "") => Play.Begun(Play.Drill(Block(aims, order, rest)), Setup);
}
