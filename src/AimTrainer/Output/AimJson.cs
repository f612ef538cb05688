using AimTrainer.Motion;

namespace AimTrainer.Output;

/// <summary>An advice as <c>docs/motion.md</c> describes it.</summary>
internal static class AimJson
{
    public static object Of(AimView view)
    {
        var (advice, window) = (view.Advice, view.Settings.Window);
        return new
        {
            view.Source,
            Window = new
            {
                window.LowBoard,
                window.HighBoard,
                LowAngleDeg = window.LowAngleDegrees,
                HighAngleDeg = window.HighAngleDegrees,
                At = window.Place == WindowPlace.Contact ? "contact" : "60",
            },
            Bowler = new
            {
                Hand = Words.Of(view.Bowler.Hand),
                SpeedMph = PlainNumber.Of(view.Bowler.SpeedMph),
                RevsRpm = PlainNumber.Of(view.Bowler.RevsRpm),
                AxisRotationDeg = PlainNumber.Of(view.Bowler.AxisRotationDegrees),
                AxisTiltDeg = PlainNumber.Of(view.Bowler.AxisTiltDegrees),
                Spreads = view.Bowler.Scatter.Spreads.AsEnumerable().Select(PlainNumber.Of),
                Correlations = view.Bowler.Scatter.Correlations.AsEnumerable().Select(PlainNumber.Of).Chunk(Scatter.Parts),
            },
            advice.ReachesWindow,
            Best = new
            {
                LaydownBoard = PlainNumber.Of(advice.Best.Line.LaydownBoard),
                LaunchAngleDeg = PlainNumber.Of(advice.Best.Line.LaunchAngleDegrees),
                ArrowsFeet = PlainNumber.Of(view.ArrowsFeet),
                ArrowsBoard = PlainNumber.Of(advice.ArrowsBoard),
                DownlaneFeet = PlainNumber.Of(view.Settings.DownlaneFeet),
                DownlaneBoard = PlainNumber.Of(advice.DownlaneBoard),
                Chance = PlainNumber.Of(advice.Best.Chance),
                ChanceError = PlainNumber.Of(advice.ChanceError),
                LowChance = PlainNumber.Of(advice.LowChance),
                HighChance = PlainNumber.Of(advice.HighChance),
                BoardChance = PlainNumber.Of(advice.Best.BoardChance),
                AngleChance = PlainNumber.Of(advice.Best.AngleChance),
                MeantBoard = PlainNumber.Of(window.Board(advice.Meant)),
                MeantAngleDeg = PlainNumber.Of(window.Angle(advice.Meant)),
                Room = advice.Room,
            },
            view.LaneFitted,
            advice.Lanes,
            Halving = advice.Worths.AsEnumerable().Select(worth => new
            {
                Spread = Json.Word(worth.Part),
                Chance = PlainNumber.Of(worth.Chance),
                Points = PlainNumber.Of(worth.Points),
                ErrorPoints = PlainNumber.Of(worth.ErrorPoints),
            }),
            Practise = advice.Practise is { } part ? Json.Word(part) : null,
            Drill = view.DrillId,
            view.DrillFile,
            view.Settings.Seed,
            MapThrows = view.Settings.MapThrows,
            Map = advice.Map.AsEnumerable().Select(one => new
            {
                LaydownBoard = PlainNumber.Of(one.Line.LaydownBoard),
                LaunchAngleDeg = PlainNumber.Of(one.Line.LaunchAngleDegrees),
                Chance = PlainNumber.Of(one.Chance),
                Error = PlainNumber.Of(one.Error),
            }),
        };
    }
}
