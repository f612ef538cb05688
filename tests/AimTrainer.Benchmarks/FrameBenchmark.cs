using System.Diagnostics;
using System.Globalization;
using AimTrainer.Calibration;
using AimTrainer.Display;
using AimTrainer.Display.Tests;
using Silk.NET.OpenGL;

namespace AimTrainer.Benchmarks;

/// <summary>
/// One frame of the full projector scene and of the overhead scene, against a frame that only clears, turn by turn; each ends with
/// glFinish. Also by the GPU's own timer, and the first frame of a scene that is new (worked out, uploaded, drawn).
/// </summary>
internal static class FrameBenchmark
{
    private const int Rounds = 200;
    private const int NewScenes = 20;

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

        return Task.CompletedTask;
    }

    private static void Measure(EglSurface surface)
    {
        var lens = OpenGlSamples.Maps["barrel lens"];
        var map = OpenGlSamples.Maps["straight, from above the bowler"];
        var overlapped = map with
        {
            Stretch = new(Domain.Feet.FromFeet(-15), Domain.Feet.FromFeet(63), Domain.Feet.FromFeet(0), Domain.Feet.FromFeet(20)),
        };
        using var projector = new ProjectorPainter();
        using var overhead = new OverheadPainter();
        projector.Start(surface.Gl);
        overhead.Start(surface.Gl);
        overhead.Show(OpenGlSamples.Screen());

        Compare(surface, "projector", projector, () => projector.Show(OpenGlSamples.Lane(), map));
        Compare(surface, "projector with a lens that bends", projector, () => projector.Show(OpenGlSamples.Lane(), lens));
        Compare(surface, "projector that overlaps another", projector, () => projector.Show(OpenGlSamples.Lane(), overlapped));
        Compare(surface, "overhead", overhead, () => overhead.Show(OpenGlSamples.Screen()));
        WorkOut(surface, projector, map, overhead);
    }

    private static void Compare(EglSurface surface, string what, ScenePainter painter, Action show)
    {
        show();
        var gl = surface.Gl;
        var query = gl.GenQuery();
        var (frames, clears, ratios, onGpu) = (new List<double>(), new List<double>(), new List<double>(), new List<double>());
        for (var round = -5; round < Rounds; round++)
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

    private static void WorkOut(EglSurface surface, ProjectorPainter projector, ProjectorMap map, OverheadPainter overhead)
    {
        var (lane, screen) = (new List<double>(), new List<double>());
        for (var round = 0; round < NewScenes; round++)
        {
            var target = OpenGlSamples.Fill(new(0, 170, 255), OpenGlSamples.Target(10 + (round / 2.0), 3, 15, 4));
            var newLane = OpenGlSamples.Lane();
            newLane = newLane with { Shapes = [.. newLane.Shapes, target] };
            var newScreen = OpenGlSamples.Screen();
            newScreen = newScreen with { Background = new((byte)round, 0, 0) };
            lane.Add(Time(surface.Gl, () =>
            {
                projector.Show(newLane, map);
                projector.Paint(surface.Size);
            }));
            screen.Add(Time(surface.Gl, () =>
            {
                overhead.Show(newScreen);
                overhead.Paint(surface.Size);
            }));
        }

        Console.WriteLine($"  first frame of a new scene: projector {new Spread(lane)} ms, overhead {new Spread(screen)} ms; {NewScenes} scenes");
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
