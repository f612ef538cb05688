using System.Text.Json;
using AimTrainer.Analysis;

namespace AimTrainer.Output;

/// <summary>A comparison as <c>docs/comparison.md</c> describes it.</summary>
internal static class CompareJson
{
    public static void Write(UserConsole console, string file, CompareInput input, ComparisonSettings settings, ComparisonReport report)
    {
        using var output = new BufferedStream(console.OpenOut(), 1 << 16);
        using (var writer = new Utf8JsonWriter(output, Json.Indented))
        {
            writer.WriteStartObject();
            writer.WriteString("file"u8, file);
            writer.WriteString("bowler"u8, input.Bowler);
            writer.WriteString("reference"u8, report.Reference);
            writer.WriteNumber("confidence"u8, BoundedEstimate.UsualConfidence);
            writer.WriteNumber("shots"u8, input.Throws.Count);
            writer.WriteNumber("repeatedShots"u8, input.Repeated);
            writer.WriteNumber("shotsOfOthers"u8, input.OfOthers);
            writer.WriteNumber("unreadableRows"u8, input.Unreadable);
            AnalyseJson.Write(writer, "margins", new { settings.MarginBoards, settings.MarginDegrees, settings.MarginFeet, settings.MarginMph });
            AnalyseJson.Write(writer, "lines", report.Lines);
            AnalyseJson.Write(writer, "overall", report.Overall);
            AnalyseJson.Write(writer, "balls", report.Balls);
            AnalyseJson.Write(writer, "excluded", report.Excluded.Select(
                one => new { one.Number, FileLine = input.Lines[one.Number], one.Ball, one.Line, one.Measure, one.Reason }));
            AnalyseJson.Write(writer, "notices", report.Notices);
            writer.WriteEndObject();
        }

        output.WriteByte((byte)'\n');
    }
}
