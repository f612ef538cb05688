using System.Diagnostics;
using System.Globalization;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Display.Tests;
using AimTrainer.Domain;
using Silk.NET.OpenGL;

namespace AimTrainer.Benchmarks;

/// <summary>
/// One frame of the scenes that the program draws (a line that was held, with the ball's way; a screen with ten shots), against a frame that
/// only clears, turn by turn; each ends with glFinish. Also by the GPU's own timer, what it takes to build a scene, and the first frame of
/// every state that the tests know (worked out, uploaded, drawn).
/// </summary>
internal static class FrameBenchmark
{
    private const int Rounds = 200;
    private const int Warming = 20;

    public static Task RunAsync()
    {
        foreach (var size in new[] { new PictureSize(1920, 1080), new PictureSize(3840, 2160) })
        {
            var opened = EglSurface.Open(size);
            if (!opened.Worked)
            {
                Console.WriteLine($"frame: not measured, {opened.Problem}");
                return Task.CompletedTask;
            }

            using var surface = opened.Surface;
            Console.WriteLine(FormattableString.Invariant($"frame: {size.Width} x {size.Height} on {surface.Driver}"));
            Measure(surface);
        }

        Build();
        return Task.CompletedTask;
    }

    private static void Measure(EglSurface surface)
    {
        var straight = OpenGlSamples.Maps["straight, from above the bowler"];
        var overlapped = straight with
        {
            Stretch = new(Feet.FromFeet(-15), Feet.FromFeet(63), Feet.FromFeet(0), Feet.FromFeet(20)),
        };
        using var projector = new ProjectorPainter();
        using var overhead = new OverheadPainter();
        projector.Start(surface.Gl);
        overhead.Start(surface.Gl);

        var lane = ProjectorScene.Build(State("line-held").Projector);
        Compare(surface, "projector, a line held", projector, () => projector.Show(lane, straight));
        Compare(surface, "the same through a keystoned map", projector, () => projector.Show(lane, OpenGlSamples.Maps["keystoned to the left"]));
        Compare(surface, "the same through a lens that bends", projector, () => projector.Show(lane, OpenGlSamples.Maps["barrel lens"]));
        Compare(surface, "the same where 20 ft overlap another's", projector, () => projector.Show(lane, overlapped));
        Compare(surface, "overhead, ten shots", overhead, () => overhead.Show(OverheadScene.Build(State("ten-shots").Overhead)));
        Compare(surface, "overhead, a line held", overhead, () => overhead.Show(OverheadScene.Build(State("line-held").Overhead)));
        FirstFrames(surface, projector, straight, overhead);
    }

    private static SceneState State(string name) => SceneStates.All().Single(state => state.Name == name);

    private static void Compare(EglSurface surface, string what, ScenePainter painter, Action show)
    {
        show();
        var gl = surface.Gl;
        var query = gl.GenQuery();
        var (frames, clears, ratios, onGpu) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
        for (var round = -Warming; round < Rounds; round++)
        {
            var clear = Time(gl, () => Clear(gl));
            var frame = Time(gl, () => painter.Paint(surface.Size));
            gl.BeginQuery(QueryTarget.TimeElapsed, query);
            painter.Paint(surface.Size);
            gl.EndQuery(QueryTarget.TimeElapsed);
            gl.GetQueryObject(query, QueryObjectParameterName.Result, out ulong nanoseconds);
            if (round >= 0)
            {
                frames.Add(frame);
                clears.Add(clear);
                ratios.Add(frame / clear);
                onGpu.Add(nanoseconds / 1e6);
            }
        }

        gl.DeleteQuery(query);
        var (all, before) = (new Spread(frames), GC.GetAllocatedBytesForCurrentThread());
        for (var i = 0; i < 10; i++)
        {
            painter.Paint(surface.Size);
        }

        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  {what}: {all} ms a frame, 99 % within {all.At(0.99):0.00} ms, {1000 / all.Median:0} frames/s; clear only {new Spread(clears)} ms; ratio {new Spread(ratios)}; "
            + $"processor time {Processor(gl, () => painter.Paint(surface.Size)):0.00} ms (clear only {Processor(gl, () => Clear(gl)):0.00}); "
            + $"GPU timer {new Spread(onGpu)} ms; {allocated} bytes allocated in 10 frames; {painter.Rectangles} rectangles, {painter.EdgePixels} edge pixels; {Rounds} rounds"));
    }

    /// <summary>Twice through every state: the first time compiles the program.</summary>
    private static void FirstFrames(EglSurface surface, ProjectorPainter projector, ProjectorMap map, OverheadPainter overhead)
    {
        var states = SceneStates.All();
        var (lane, screen) = (new List<double>(), new List<double>());
        for (var round = 0; round < 2 * states.Count; round++)
        {
            var state = states[round % states.Count];
            var (newLane, newScreen) = (ProjectorScene.Build(state.Projector), OverheadScene.Build(state.Overhead));
            var (onLane, onScreen) = (
                Time(surface.Gl, () =>
                {
                    projector.Show(newLane, map);
                    projector.Paint(surface.Size);
                }),
                Time(surface.Gl, () =>
                {
                    overhead.Show(newScreen);
                    overhead.Paint(surface.Size);
                }));
            if (round >= states.Count)
            {
                lane.Add(onLane);
                screen.Add(onScreen);
            }
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"  first frame of a new scene: projector {new Spread(lane)} ms, 95 % within {new Spread(lane).At(0.95):0.00} ms; "
            + $"overhead {new Spread(screen)} ms, 95 % within {new Spread(screen).At(0.95):0.00} ms; {states.Count} states"));
    }

    /// <summary>From a snapshot to its shapes; no graphics.</summary>
    private static void Build()
    {
        var states = SceneStates.All();
        var (lane, screen) = (new List<double>(), new List<double>());
        for (var round = -Warming; round < Rounds / 4; round++)
        {
            foreach (var state in states)
            {
                var from = Stopwatch.GetTimestamp();
                _ = ProjectorScene.Build(state.Projector);
                var between = Stopwatch.GetTimestamp();
                _ = OverheadScene.Build(state.Overhead);
                var to = Stopwatch.GetTimestamp();
                if (round >= 0)
                {
                    lane.Add(Stopwatch.GetElapsedTime(from, between).TotalMicroseconds);
                    screen.Add(Stopwatch.GetElapsedTime(between, to).TotalMicroseconds);
                }
            }
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"scene built from a snapshot: projector median {new Spread(lane).Median:0} µs, 99 % within {new Spread(lane).At(0.99):0} µs; "
            + $"overhead median {new Spread(screen).Median:0} µs, 99 % within {new Spread(screen).At(0.99):0} µs; {states.Count} states, {Rounds / 4} rounds"));
    }

    private static void Clear(GL gl)
    {
        gl.ClearColor(0, 0, 0, 1);
        gl.Clear(ClearBufferMask.ColorBufferBit);
    }

    /// <summary>Milliseconds of all threads of this process together: what a frame costs whatever else the machine does.</summary>
    private static double Processor(GL gl, Action draw)
    {
        using var process = Process.GetCurrentProcess();
        gl.Finish();
        var from = process.TotalProcessorTime;
        for (var i = 0; i < Rounds; i++)
        {
            draw();
            gl.Finish();
        }

        process.Refresh();
        return (process.TotalProcessorTime - from).TotalMilliseconds / Rounds;
    }

    private static double Time(GL gl, Action draw)
    {
        gl.Finish();
        var from = Stopwatch.GetTimestamp();
        draw();
        gl.Finish();
        return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
    }
}
