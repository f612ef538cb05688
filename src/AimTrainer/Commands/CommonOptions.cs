using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AimTrainer.Domain;

namespace AimTrainer.Commands;

/// <summary>Options that several commands share.</summary>
internal static class CommonOptions
{
    public const string DataName = "--data";

    public static Option<string?> Data() => new(DataName)
    {
        Description = "Folder of the records; without it the platform's usual place for a program's data.",
        Recursive = true,
        HelpName = "DIR",
        CustomParser = result => Words(result, DataName, "a folder"),
    };

    public static Option<bool> Json() => new("--json") { Description = "Print one JSON document for machines: plain numbers, units in the keys." };

    public static Option<bool> JsonLines() => new("--json")
    {
        Description = "Print JSON for machines, an object a line as things happen; the last but for notices is the session's record.",
    };

    public static Option<string> Drill(bool required) => new("--drill")
    {
        Description = "A drill file, or the id of a shipped drill or one of your own (see: drill list).",
        Required = required,
        HelpName = "FILE|ID",
    };

    public static Option<string?> Lane() => new("--lane") { Description = "A lane profile (docs/lanes.md); without it a 41.5 in lane with the usual marks.", HelpName = "FILE" };

    public static Option<string?> Map() => new("--map") { Description = "A mapping file for CSV headings and units that are not ours (see: shots map).", HelpName = "FILE" };

    public static Option<Hand?> Hand() => new("--hand") { Description = "The bowler's hand, right or left.", CustomParser = ParseHand, HelpName = "right|left" };

    public static Option<ulong?> Seed() => new("--seed")
    {
        Description = "Seed for whatever is left to chance: the same seed gives the same order (and the same simulated shots).",
        HelpName = "N",
        CustomParser = result =>
        {
            if (ulong.TryParse(result.Tokens[0].Value, NumberStyles.None, CultureInfo.InvariantCulture, out var seed))
            {
                return seed;
            }

            result.AddError($"--seed: found {result.Tokens[0].Value}; allowed: a whole number from 0 to {ulong.MaxValue}");
            return null;
        },
    };

    public static Option<double?> Pattern() => Number("--pattern", "Length of the oil pattern in feet, for drills that aim at its exit.", 32, 52, "FEET");

    public static Option<Breakpoint?> Breakpoint() => new("--breakpoint")
    {
        Description = "The bowler's breakpoint as BOARD@FEET (8@42), for drills that aim at it; without it the recorded one.",
        CustomParser = ParseBreakpoint,
        HelpName = "BOARD@FEET",
    };

    /// <summary>An optional number in an inclusive range.</summary>
    public static Option<double?> Number(string name, string description, double low, double high, string helpName) => new(name)
    {
        Description = $"{description} {low} to {high}.",
        HelpName = helpName,
        CustomParser = result =>
        {
            if (TryNumber(result.Tokens[0].Value, low, high, out var value))
            {
                return value;
            }

            result.AddError($"{name}: found {result.Tokens[0].Value}; allowed: {low} to {high}");
            return null;
        },
    };

    /// <summary>A whole number in an inclusive range, with a default.</summary>
    public static Option<int> Whole(string name, string description, int low, int high, int byDefault) => new(name)
    {
        Description = description,
        HelpName = "N",
        DefaultValueFactory = _ => byDefault,
        CustomParser = result =>
        {
            var text = result.Tokens[0].Value;
            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value)
                && value >= low && value <= high)
            {
                return value;
            }

            result.AddError($"{name}: found {text}; allowed: a whole number from {low} to {high}");
            return byDefault;
        },
    };

    /// <summary>A name of somebody or something.</summary>
    public static Option<string?> Name(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "NAME",
        CustomParser = result => Words(result, name, "a name"),
    };

    private static string? Words(ArgumentResult result, string name, string allowed)
    {
        var text = result.Tokens[0].Value;
        if (!string.IsNullOrWhiteSpace(text) && !text.Any(char.IsControl))
        {
            return text;
        }

        result.AddError($"{name}: found {(string.IsNullOrWhiteSpace(text) ? "nothing" : "control characters")}; allowed: {allowed}");
        return null;
    }

    private static Hand? ParseHand(ArgumentResult result)
    {
        switch (result.Tokens[0].Value.ToUpperInvariant())
        {
            case "RIGHT":
                return Domain.Hand.Right;
            case "LEFT":
                return Domain.Hand.Left;
            default:
                result.AddError($"--hand: found {result.Tokens[0].Value}; allowed: right, left");
                return null;
        }
    }

    private static Breakpoint? ParseBreakpoint(ArgumentResult result)
    {
        var parts = result.Tokens[0].Value.Split('@');
        if (parts.Length == 2 && TryNumber(parts[0], 0.5, 39.5, out var board) && TryNumber(parts[1], 0, 60, out var feet))
        {
            return new Breakpoint(Board.FromMeasurement(board), Feet.FromMeasurement(feet));
        }

        result.AddError($"--breakpoint: found {result.Tokens[0].Value}; allowed: a board from 0.5 to 39.5 and feet from 0 to 60, as 8@42");
        return null;
    }

    private static bool TryNumber(string text, double low, double high, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
        && value >= low && value <= high;
}
