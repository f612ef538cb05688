using AimTrainer.Analysis;
using AimTrainer.Domain;
using AimTrainer.Sessions;

namespace AimTrainer.Web;

/// <summary>A member of a group with what the record says.</summary>
/// <param name="Member">The member.</param>
/// <param name="ScreenName">The name as screens may show it.</param>
/// <param name="Progress">How the member stands in the program.</param>
/// <param name="Width">The narrowest width that is held in tests at the arrows.</param>
/// <param name="Improved">What may be said of the spread; <see cref="ImprovementVerdict.TooFew"/> before the first look.</param>
/// <param name="Contest">Test misses before the group's newest program week that has begun, and in it.</param>
public sealed record MemberView(
    GroupMember Member, string ScreenName, ProgramProgress Progress, WidthHeld Width, ImprovementVerdict Improved, ContestEntry Contest)
{
    /// <summary>The badges, in words. Only test blocks make them.</summary>
    public ValueList<string> Badges
    {
        get
        {
            var badges = new List<string>();
            if (Width.Boards is { } boards)
            {
                badges.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Holds {boards:0} {(boards == 1 ? "board" : "boards")}"));
            }

            if (Improved == ImprovementVerdict.Improved)
            {
                badges.Add("Improved, by the tests");
            }

            if (Progress.IsComplete)
            {
                badges.Add("Whole program");
            }

            return badges.ToValueList();
        }
    }
}
