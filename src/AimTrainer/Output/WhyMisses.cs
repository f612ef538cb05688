using AimTrainer.Analysis;

namespace AimTrainer.Output;

/// <summary>A sentence for each miss, as shots go by.</summary>
/// <param name="text">Where it is said.</param>
/// <param name="words">Says it.</param>
/// <param name="kind">What the parts are held against.</param>
/// <param name="most">So many sentences at most; what is left out is counted.</param>
internal sealed class WhyMisses(WhyText text, MissWords words, PlanKind kind, int most)
{
    private int _said;
    private int _misses;

    /// <summary>Says where the misses of a shot came from. A place without a width is missed by half a board or more.</summary>
    public void Add(string name, ObservedShot shot, StudiedShot studied)
    {
        for (var i = 0; i < shot.Targets.Count; i++)
        {
            var target = shot.Targets[i];
            var missed = target.Held is { } held ? !held : target.Miss is { } miss && Math.Abs(miss.Boards) >= MissWords.WorthAWordBoards;
            if (!missed)
            {
                continue;
            }

            if (_misses++ == 0)
            {
                text.Heading("The misses");
            }

            if (_said < most)
            {
                _said++;
                text.Line($"  {name}: {words.Of(studied.Split, i, kind)}{(studied.Gross[i] == true ? ". A gross miss: misread or real?" : "")}");
            }
        }
    }

    /// <summary>Says what was left out, and what changes without gross misses.</summary>
    public void Finish(SplitSet? withoutGross)
    {
        if (_misses == 0)
        {
            text.Line("");
            text.Line("No miss that was measured.");
        }

        if (_misses > _said)
        {
            text.Line($"  and {_misses - _said} more: --json has all");
        }

        if (withoutGross is { } set)
        {
            text.Without(set);
        }
    }
}
