using System.Text.Json;
using AimTrainer.Domain;

namespace AimTrainer.Web;

/// <summary>What a calibration in another process reports: its state now, and what came of actions.</summary>
/// <param name="Attachment">The attachment that it is of; empty as it attaches.</param>
/// <param name="Answers">What came of actions.</param>
/// <param name="State">Its state, a JSON object (<c>docs/calibration.md</c>).</param>
internal sealed record CalibrationReport(string Attachment, ValueList<CalibrationActionDone> Answers, JsonElement State)
{
    private const int MostAnswers = 256, LongestProblem = 2000;

    /// <summary>Reads one, or everything that is wrong with it.</summary>
    /// <param name="utf8">The whole object.</param>
    /// <param name="station">The station that the address names.</param>
    /// <param name="projector">The projector that the address names.</param>
    /// <param name="attaching">Whether it is the first, which has no attachment yet.</param>
    public static FileRead<CalibrationReport> Read(byte[] utf8, int station, string projector, bool attaching)
    {
        var file = JsonFile.Read(RequestBody.Name, utf8);
        CalibrationReport? report = null;
        if (file.Root is { } root && ObjectReader.Of(file, root) is { } json)
        {
            var attachment = attaching ? "" : json.Text("attachment", 40);
            var answers = attaching ? [] : (json.OptionalObjects("answers", 0, MostAnswers, "answers") ?? []).Select(Answer).ToValueList();
            if (json.Object("state") is { } state)
            {
                Is(state, "station", state.Whole("station", 1, 64) is { } number && number == station, $"{station}, as in the address");
                Is(state, "projector", state.Text("projector", 100) == projector, $"{FoundText.Quoted(projector)}, as in the address");
                state.Whole("version", 0, long.MaxValue);
            }

            json.Done();
            if (!file.HasProblems)
            {
                using var document = JsonDocument.Parse(utf8);
                report = new CalibrationReport(attachment!, answers, document.RootElement.GetProperty("state").Clone());
            }
        }

        return new FileRead<CalibrationReport>(report, file.Problems);
    }

    private static void Is(ObjectReader json, string name, bool holds, string allowed)
    {
        if (!holds)
        {
            json.Report(name, "another", allowed);
        }
    }

    private static CalibrationActionDone Answer(ObjectReader json)
    {
        var answer = new CalibrationActionDone(json.Whole("number", 1, long.MaxValue) ?? 0, json.Flag("understood") ?? false, json.OptionalText("problem", LongestProblem) ?? "");
        json.Done();
        return answer;
    }
}
