using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>The 39 boards as one line of text, right edge on the right: where the target lies and where the ball crossed.</summary>
internal static class LaneStrip
{
    /// <summary>Draws a target and, when it is known, the crossing: <c>O</c> on the target, <c>x</c> beside it.</summary>
    public static string Draw(Target target, Board? crossing, bool held, Hand hand)
    {
        Span<char> boards = stackalloc char[LaneProfile.BoardCount];
        var (first, last) = Painted(target);
        for (var i = 0; i < boards.Length; i++)
        {
            boards[i] = i >= first && i <= last ? '=' : (i + 1) % 5 == 0 ? '+' : '.';
        }

        if (crossing is { } crossed)
        {
            // A shot that is held lies on what is painted, also where its board is painted only in part.
            boards[held ? Math.Clamp(Index(crossed), first, last) : Index(crossed)] = held ? 'O' : 'x';
        }

        if (hand == Hand.Right)
        {
            boards.Reverse();
        }

        return $"|{boards}|";
    }

    /// <summary>The boards whose middle is on the target; its centre's board where there is none, so that a narrow one still shows.</summary>
    private static (int First, int Last) Painted(Target target)
    {
        var first = Math.Max(0, (int)Math.Ceiling(target.OutsideEdge.Boards) - 1);
        var last = Math.Min(LaneProfile.BoardCount, (int)Math.Floor(target.InsideEdge.Boards)) - 1;
        var centre = Index(target.Centre);
        return first <= last ? (first, last) : (centre, centre);
    }

    private static int Index(Board board) => Math.Clamp((int)Math.Round(board.Boards, MidpointRounding.ToEven), 1, LaneProfile.BoardCount) - 1;
}
