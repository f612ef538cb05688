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
        writer.WriteNumber(JsonNames.Number, shot.Number);
        if (thrownAt is { } time)
        {
            writer.WriteString(JsonNames.Time, time);
        }
        else
        {
            writer.WriteNull(JsonNames.Time);
        }

        WriteTargets(writer, shot);
        WriteBoolean(writer, JsonNames.Comparable, shot.Comparability.IsComparable);
        writer.WriteStartArray(JsonNames.Reasons);
        foreach (var reason in shot.Comparability.Reasons)
        {
            writer.WriteStringValue(reason);
        }

        writer.WriteEndArray();
        writer.WriteStartArray(JsonNames.NextWidthsBoards);
        foreach (var next in nextWidths)
        {
            writer.WriteNumberValue(next.Width.ExactBoards);
        }

        writer.WriteEndArray();
        WriteWhereAny(writer, JsonNames.NextWidthsUncertain, nextWidths, next => next.Uncertain);
        WriteWhereAny(writer, JsonNames.LeftOutOfWidths, nextWidths, next => next.LeftOut);
        if (shot.LaunchAngle is { } launch)
        {
            writer.WriteStartObject(JsonNames.LaunchAngle);
            writer.WriteNumber(JsonNames.Degrees, launch.Angle.Value);
            writer.WriteString(JsonNames.From, launch.Computed ? "computed"u8 : "reported"u8);
            writer.WriteEndObject();
        }

        if (shot.Compared is { } thrown)
        {
            writer.WriteStartObject("compared"u8);
            writer.WriteString("line"u8, shot.Aim);
            writer.WriteString("ball"u8, thrown.Ball);
            writer.WriteString("due"u8, thrown.Due);
            writer.WriteString("role"u8, thrown.Role);
            writer.WriteBoolean("ballWasNamed"u8, thrown.IsNamed);
            writer.WriteBoolean("laneCheck"u8, thrown.IsCheck);
            writer.WriteBoolean("good"u8, thrown.IsGood);
            writer.WriteString("notGood"u8, thrown.NotGood);
            writer.WriteEndObject();
        }

        if (asFirstGraded is not null)
        {
            writer.WriteStartObject(JsonNames.AsFirstGraded);
            WriteTargets(writer, asFirstGraded);
            writer.WriteEndObject();
        }

        if (shot.VoidReason is { } why)
        {
            writer.WriteString(JsonNames.Void, why);
        }

        writer.WriteEndObject();
    }

    public static void WriteSummary(Utf8JsonWriter writer, BlockSummary summary, ValueList<TargetThreshold> thresholds)
    {
        writer.WriteStartObject(JsonNames.Summary);
        writer.WriteStartArray(JsonNames.PerTarget);
        foreach (var target in summary.PerTarget)
        {
            writer.WriteStartObject();
            writer.WriteString(JsonNames.Name, target.Name);
            writer.WriteNumber(JsonNames.Shots, target.Shots);
            writer.WriteNumber(JsonNames.Graded, target.Graded);
            writer.WriteNumber(JsonNames.Hits, target.Hits);
            WriteNumber(writer, JsonNames.HitRate, target.HitRate);
            WriteNumber(writer, JsonNames.HitRateLow, target.HitRateLow);
            WriteNumber(writer, JsonNames.HitRateHigh, target.HitRateHigh);
            WriteNumber(writer, JsonNames.ConstantErrorBoards, target.ConstantErrorBoards);
            WriteNumber(writer, JsonNames.VariableErrorBoards, target.VariableErrorBoards);
            WriteNumber(writer, JsonNames.AbsoluteErrorBoards, target.AbsoluteErrorBoards);
            WriteNumber(writer, JsonNames.TotalErrorBoards, target.TotalErrorBoards);
            WriteNumber(writer, JsonNames.SpreadBoards, target.SpreadBoards);
            WriteNumber(writer, JsonNames.MinBoard, target.MinBoard?.Boards);
            WriteNumber(writer, JsonNames.MaxBoard, target.MaxBoard?.Boards);
            if (thresholds.AsEnumerable().FirstOrDefault(threshold => threshold.Target == target.Name) is { } threshold)
            {
                WriteThreshold(writer, threshold.Threshold);
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteNumber(JsonNames.Points, summary.Points);
        if (thresholds.Count == 1)
        {
            WriteThreshold(writer, thresholds[0].Threshold);
        }

        writer.WriteEndObject();
    }

    private static void WriteTargets(Utf8JsonWriter writer, GradedShot shot)
    {
        writer.WriteStartArray(JsonNames.Targets);
        foreach (var target in shot.Targets)
        {
            WriteTarget(writer, target);
        }

        writer.WriteEndArray();
        WriteBoolean(writer, JsonNames.Held, shot.Held);
    }

    /// <summary>One truth value for each target, where it is true of any: most rules are never uncertain and leave nothing out.</summary>
    private static void WriteWhereAny(Utf8JsonWriter writer, JsonEncodedText name, ValueList<NextWidth> widths, Func<NextWidth, bool> isSo)
    {
        var any = false;
        foreach (var next in widths)
        {
            any |= isSo(next);
        }

        if (!any)
        {
            return;
        }

        writer.WriteStartArray(name);
        foreach (var next in widths)
        {
            writer.WriteBooleanValue(isSo(next));
        }

        writer.WriteEndArray();
    }

    private static void WriteThreshold(Utf8JsonWriter writer, Threshold threshold)
    {
        writer.WriteStartObject(JsonNames.Threshold);
        WriteNumber(writer, JsonNames.WidthBoards, threshold.Boards);
        writer.WriteNumber(JsonNames.Reversals, threshold.Reversals);
        writer.WriteEndObject();
    }

    private static void WriteTarget(Utf8JsonWriter writer, TargetResult target)
    {
        writer.WriteStartObject();
        writer.WriteString(JsonNames.Name, target.Name);
        writer.WriteNumber(JsonNames.DistanceFeet, target.Target.Distance.Value);
        writer.WriteNumber(JsonNames.CentreBoard, target.Target.Centre.ExactBoards);
        writer.WriteNumber(JsonNames.WidthBoards, target.Target.Width.ExactBoards);
        writer.WriteString(JsonNames.Crossing, target.Crossing.Kind switch
        {
            CrossingKind.Measured => "measured"u8,
            CrossingKind.Interpolated => "interpolated"u8,
            _ => "unknown"u8,
        });
        WriteMeasured(writer, JsonNames.CrossingBoard, target.Crossing.Board?.ExactBoards);
        WriteMeasured(writer, JsonNames.MissBoards, target.Miss?.ExactBoards);
        if (target.Grade is { } grade)
        {
            writer.WriteString(JsonNames.Grade, grade.Name);
            writer.WriteNumber(JsonNames.Points, grade.Points);
        }
        else
        {
            writer.WriteNull(JsonNames.Grade);
            writer.WriteNull(JsonNames.Points);
        }

        writer.WriteEndObject();
    }

    /// <summary>A value in hundredths: short and plain as it is.</summary>
    private static void WriteMeasured(Utf8JsonWriter writer, JsonEncodedText name, decimal? value)
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
    private static void WriteNumber(Utf8JsonWriter writer, JsonEncodedText name, double? value)
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

    private static void WriteBoolean(Utf8JsonWriter writer, JsonEncodedText name, bool? value)
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
