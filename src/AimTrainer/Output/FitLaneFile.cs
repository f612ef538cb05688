using AimTrainer.Domain;
using AimTrainer.Motion;
using AimTrainer.Sessions;

namespace AimTrainer.Output;

/// <summary>The shots of a file as a fit needs them: each once, and what became of the others.</summary>
internal static class FitLaneFile
{
    public static FitShots Read(IEnumerable<FeedItem> items, AimBowler? usual, Hand? hand, Action<FileProblem> report)
    {
        var (shots, again, seen) = (new List<(Shot, Hand, int)>(), new List<(int Line, string Why)>(), new DuplicateShots());
        foreach (var item in items)
        {
            if (item is FeedItem.Unreadable unreadable)
            {
                report(unreadable.Problem);
                continue;
            }

            var read = (FeedItem.ShotRead)item;
            if (seen.Add(read.Shot))
            {
                shots.Add((read.Shot, read.Hand ?? hand ?? usual?.Hand ?? Hand.Right, read.Line));
            }
            else
            {
                again.Add((read.Line, "the same shot again"));
            }
        }

        var fit = FitShots.Of(shots, usual, "give the bowler's usual throw with --usual");
        return fit with { LeftOut = fit.LeftOut.Concat(again).OrderBy(one => one.Line).ToValueList() };
    }
}
