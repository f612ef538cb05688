using System.Text.Json;
using AimTrainer.Analysis;
using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>Writes shots and figures as the JSON of <c>replay --json</c> and <c>sessions show --json</c>; the shape is in docs/json.md.</summary>
internal static class SessionJson
{
    /// <param name="writer">Where to.</param>
    /// <param name="shot">The shot as it stands.</param>
    /// <param name="thrownAt">When it was thrown, as far as that is known.</param>
    /// <param name="nextWidths">The widths that followed it.</param>
    /// <param name="asFirstGraded">The shot before it was corrected; null when it never was.</param>
    public static void WriteShot(
        Utf8JsonWriter writer, GradedShot shot, DateTimeOffset? thrownAt, ValueList<NextWidth> nextWidths, GradedShot? asFirstGraded = null)
    {
        writer.WriteStartObject();
        writer.WriteNumber("number"u8, shot.Number);
        if (thrownAt is { } time)
        {
            writer.WriteString("time"u8, time);
        }
        else
        {
            writer.WriteNull("time"u8);
        }

        WriteTargets(writer, shot);
        WriteBoolean(writer, "comparable"u8, shot.Comparability.IsComparable);
        writer.WriteStartArray("reasons"u8);
        foreach (var reason in shot.Comparability.Reasons)
        {
            writer.WriteStringValue(reason);
        }

        writer.WriteEndArray();
        writer.WriteStartArray("nextWidthsBoards"u8);
        foreach (var next in nextWidths)
        {
            writer.WriteNumberValue(next.Width.Boards);
        }

        writer.WriteEndArray();
        if (shot.LaunchAngle is { } launch)
        {
            writer.WriteStartObject("launchAngle"u8);
            writer.WriteNumber("degrees"u8, launch.Angle.Value);
            writer.WriteString("from"u8, launch.Computed ? "computed"u8 : "reported"u8);
            writer.WriteEndObject();
        }

        if (asFirstGraded is not null)
        {
            writer.WriteStartObject("asFirstGraded"u8);
            WriteTargets(writer, asFirstGraded);
            writer.WriteEndObject();
        }

        if (shot.VoidReason is { } why)
        {
            writer.WriteString("void"u8, why);
        }

        writer.WriteEndObject();
    }

    private static void WriteTargets(Utf8JsonWriter writer, GradedShot shot)
    {
        writer.WriteStartArray("targets"u8);
        foreach (var target in shot.Targets)
        {
            WriteTarget(writer, target);
        }

        writer.WriteEndArray();
        WriteBoolean(writer, "held"u8, shot.Held);
    }

    public static void WriteSummary(Utf8JsonWriter writer, BlockSummary summary, ValueList<TargetThreshold> thresholds)
    {
        writer.WriteStartObject("summary"u8);
        writer.WriteStartArray("perTarget"u8);
        foreach (var target in summary.PerTarget)
        {
            writer.WriteStartObject();
            writer.WriteString("name"u8, target.Name);
            writer.WriteNumber("shots"u8, target.Shots);
            writer.WriteNumber("graded"u8, target.Graded);
            writer.WriteNumber("hits"u8, target.Hits);
            WriteNumber(writer, "hitRate"u8, target.HitRate);
            WriteNumber(writer, "hitRateLow"u8, target.HitRateLow);
            WriteNumber(writer, "hitRateHigh"u8, target.HitRateHigh);
            WriteNumber(writer, "constantErrorBoards"u8, target.ConstantErrorBoards);
            WriteNumber(writer, "variableErrorBoards"u8, target.VariableErrorBoards);
            WriteNumber(writer, "absoluteErrorBoards"u8, target.AbsoluteErrorBoards);
            WriteNumber(writer, "totalErrorBoards"u8, target.TotalErrorBoards);
            WriteNumber(writer, "spreadBoards"u8, target.SpreadBoards);
            WriteNumber(writer, "minBoard"u8, target.MinBoard?.Boards);
            WriteNumber(writer, "maxBoard"u8, target.MaxBoard?.Boards);
            if (thresholds.AsEnumerable().FirstOrDefault(threshold => threshold.Target == target.Name) is { } threshold)
            {
                WriteThreshold(writer, threshold.Threshold);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteNumber("points"u8, summary.Points);
        if (thresholds.Count == 1)
        {
            WriteThreshold(writer, thresholds[0].Threshold);
        }

        writer.WriteEndObject();
    }

    private static void WriteThreshold(Utf8JsonWriter writer, Threshold threshold)
    {
        writer.WriteStartObject("threshold"u8);
        WriteNumber(writer, "widthBoards"u8, threshold.Boards);
        writer.WriteNumber("reversals"u8, threshold.Reversals);
        writer.WriteEndObject();
    }

    private static void WriteTarget(Utf8JsonWriter writer, TargetResult target)
    {
        writer.WriteStartObject();
        writer.WriteString("name"u8, target.Name);
        writer.WriteNumber("distanceFeet"u8, target.Target.Distance.Value);
        writer.WriteNumber("centreBoard"u8, target.Target.Centre.Boards);
        writer.WriteNumber("widthBoards"u8, target.Target.Width.Boards);
        writer.WriteString("crossing"u8, target.Crossing.Kind switch
        {
            CrossingKind.Measured => "measured"u8,
            CrossingKind.Interpolated => "interpolated"u8,
            _ => "unknown"u8,
        });
        WriteMeasured(writer, "crossingBoard"u8, target.Crossing.Board?.Boards);
        WriteMeasured(writer, "missBoards"u8, target.Miss?.Boards);
        if (target.Grade is { } grade)
        {
            writer.WriteString("grade"u8, grade.Name);
            writer.WriteNumber("points"u8, grade.Points);
        }
        else
        {
            writer.WriteNull("grade"u8);
            writer.WriteNull("points"u8);
        }

        writer.WriteEndObject();
    }

    /// <summary>A value in hundredths: short and plain as it is.</summary>
    private static void WriteMeasured(Utf8JsonWriter writer, ReadOnlySpan<byte> name, double? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, number);
        }
        else
        {
            writer.WriteNull(name);
        }
    }

    /// <summary>A figure that was worked out.</summary>
    private static void WriteNumber(Utf8JsonWriter writer, ReadOnlySpan<byte> name, double? value)
    {
        if (value is { } number)
        {
            // As a decimal: a double prints very small numbers with an exponent. Twelve places are far below what is measured.
            writer.WriteNumber(name, decimal.Round((decimal)number, 12) / 1.000000000000000000000000000000m);
        }
        else
        {
            writer.WriteNull(name);
        }
    }

    private static void WriteBoolean(Utf8JsonWriter writer, ReadOnlySpan<byte> name, bool? value)
    {
        if (value is { } known)
        {
            writer.WriteBoolean(name, known);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
