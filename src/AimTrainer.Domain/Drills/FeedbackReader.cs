namespace AimTrainer.Domain;

/// <summary>Reads what the bowler is told, and when.</summary>
internal static class FeedbackReader
{
    /// <summary>The block's feedback; what is wrong is reported.</summary>
    /// <param name="block">The block.</param>
    /// <param name="kind">Its kind, which sets what holds when it has none.</param>
    /// <param name="shots">How many shots the block has, when it says so.</param>
    public static Feedback Read(ObjectReader block, BlockKind kind, int? shots)
    {
        var fallback = new Feedback(kind == BlockKind.Test ? new FeedbackWhen.None() : new FeedbackWhen.Every(), FeedbackSays.Exact);
        if (block.OptionalObject("feedback") is not { } feedback)
        {
            return fallback;
        }

        FeedbackWhen? when;
        switch (feedback.Word("when", "every", "fading", "outside", "summary", "none"))
        {
            case "every":
                when = new FeedbackWhen.Every();
                break;
            case "fading":
                when = Fading(block, feedback, shots);
                break;
            case "outside":
                when = new FeedbackWhen.Outside();
                break;
            case "summary":
                when = feedback.Whole("everyShots", 1, 1000) is { } every ? new FeedbackWhen.Summary((int)every) : null;
                break;
            case "none":
                feedback.Done();
                return new Feedback(new FeedbackWhen.None(), FeedbackSays.Exact);
            default:
                // Which keys belong here hangs on "when": none is called unknown before that is right.
                return fallback;
        }

        var says = feedback.OptionalChoice<FeedbackSays>("says") ?? FeedbackSays.Exact;
        feedback.Done();
        return when is null ? fallback : new Feedback(when, says);
    }

    private static FeedbackWhen.Fading? Fading(ObjectReader block, ObjectReader feedback, int? shots)
    {
        var first = feedback.Number("firstShare", 0, 1);
        var last = feedback.Number("lastShare", 0, first ?? 1);
        if (shots is null && !UntilHasShots(block))
        {
            feedback.Report("when", "\"fading\" in a block without a number of shots", "\"shots\" in \"until\": the share falls evenly over them");
        }

        return first is { } from && last is { } to && shots is { } over ? new FeedbackWhen.Fading(from, to, over) : null;
    }

    private static bool UntilHasShots(ObjectReader block) =>
        block.Node.Members.FirstOrDefault(member => member.Name == "until")?.Value.Members.Any(member => member.Name == "shots") ?? false;
}
