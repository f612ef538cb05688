using AimTrainer.Domain;

namespace AimTrainer.Output;

/// <summary>The 39 boards as one line of text, right edge on the right: where the target lies and where the ball crossed.</summary>
internal static class LaneStrip
{
    /// <summary>Draws a target and, when it is known, the crossing: <c>O</c> on the target, <c>x</c> beside it.</summary>
    public static string Draw(Target target, Board? crossing, bool held, Hand hand)
    {
        Span<char> boards = stackalloc char[LaneProfile.BoardCount];
        for (var i = 0; i < boards.Length; i++)
        {
            var board = Board.FromBoards(i + 1);
            boards[i] = board >= target.OutsideEdge && board <= target.InsideEdge ? '=' : (i + 1) % 5 == 0 ? '+' : '.';
        }

        // A target narrower than a board, or between two, still shows.
        boards[Index(target.Centre)] = '=';
        if (crossing is { } crossed)
        {
            boards[Index(crossed)] = held ? 'O' : 'x';
        }

        if (hand == Hand.Right)
        {
            boards.Reverse();
        }

        return $"|{boards}|";
    }

    private static int Index(Board board) => Math.Clamp((int)Math.Round(board.Boards, MidpointRounding.ToEven), 1, LaneProfile.BoardCount) - 1;
}
