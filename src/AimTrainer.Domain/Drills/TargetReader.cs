namespace AimTrainer.Domain;

/// <summary>Reads the targets of a block.</summary>
/// <param name="file">The file.</param>
/// <param name="blockSizing">The rule of targets that have none of their own; null when the block's own is wrong.</param>
/// <param name="kind">The block's kind, when it is known.</param>
/// <param name="walks">Whether the block's order is a walk.</param>
/// <param name="names">The block's names.</param>
internal sealed class TargetReader(JsonFile file, Sizing? blockSizing, BlockKind? kind, bool walks, NameSet names)
{
    /// <summary>The target, or null when it cannot be made out; what is wrong is reported.</summary>
    /// <param name="target">Where it stands.</param>
    /// <param name="isNearest">Whether it stands first in its line, or alone.</param>
    public ReadTarget? Read(ObjectReader target, bool isNearest)
    {
        names.Take(target);
        var name = target.Text("name", 80);
        var place = PlaceReader.Read(target);
        var width = target.OptionalNumber("widthBoards", Target.Narrowest, Target.Widest) is { } boards ? BoardOffset.FromBoards(boards) : (BoardOffset?)null;
        var own = target.OptionalObject("sizing");
        var sizing = own is null ? target.Has("sizing") ? null : blockSizing : SizingReader.Read(own);
        var ratio = target.OptionalNumber("walkRatio", -5, 5);
        CheckWalkRatio(target, ratio, isNearest);
        if (kind is BlockKind.Test or BlockKind.Comparison)
        {
            SizingReader.RequireFixed(target);
        }

        CheckWidth(target, width, sizing);
        target.Done();
        if (name is null || place is null || sizing is null)
        {
            return null;
        }

        return new ReadTarget(
            new TargetPlan { Name = name, Place = place, Width = width, Sizing = sizing, WalkRatio = (decimal)(ratio ?? 1) },
            target);
    }

    private void CheckWalkRatio(ObjectReader target, double? ratio, bool isNearest)
    {
        if (ratio is null)
        {
            return;
        }

        if (!walks)
        {
            file.Report(target.PlaceOf("walkRatio"), "\"walkRatio\" in a block that does not walk", "order \"walk\", or no walkRatio");
        }
        else if (isNearest && ratio != 1)
        {
            target.Report("walkRatio", FormattableString.Invariant($"{ratio} at the nearest target, which leads the walk"), "no walkRatio here: it goes to the targets beyond");
        }
    }

    private static void CheckWidth(ObjectReader target, BoardOffset? width, Sizing? sizing)
    {
        switch (sizing, width)
        {
            case (FixedSizing, null) when !target.Has("widthBoards"):
                target.Report(
                    "no \"widthBoards\" and a fixed width",
                    FormattableString.Invariant($"widthBoards, {Target.Narrowest} to {Target.Widest}, or a sizing that finds the width"));
                break;
            case (LadderSizing { Widths.Count: > 0 } ladder, { } boards) when !ladder.Widths.Contains(boards):
                target.Report("widthBoards", $"{boards} boards", $"one of the ladder's widths: {string.Join(", ", ladder.Widths)}");
                break;
            case ({ } rule, { } boards) when boards < rule.Narrowest || boards > rule.Widest:
                target.Report("widthBoards", $"{boards} boards", $"a width within the sizing's limits, {rule.Narrowest} to {rule.Widest} boards");
                break;
            default:
                break;
        }
    }
}
