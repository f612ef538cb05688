using System.Diagnostics;
using System.Text.Json;

namespace AimTrainer.Benchmarks;

/// <summary>
/// The same release on the same lane, integrated by SciPy: seven numbers, time as the clock, friction by a bilinear map in plain Python,
/// as an engineer would write it.
/// </summary>
internal static class PathSciPy
{
    private const string Python = "/usr/bin/python3";

    private const string Script = """
        import json, math, statistics, sys, time
        try:
            import scipy
            from scipy.integrate import solve_ivp
        except ImportError:
            sys.exit(3)
        g, W, R, k = 9.80665, 41.5 * 0.0254 / 39, 0.108585, 0.0635
        def units(b):
            b = min(b, 40 - b)
            r = min(max((b - 5) / 8, 0.0), 1.0)
            return 6 + 54 * r * r * (3 - 2 * r)
        base = [units(b) for b in range(1, 40)]
        rows = [(f * 0.3048, [s * u for u in base]) for f, s in ((0, 1), (12, 1), (24, .75), (34, .4), (40, 0))]
        def mu(x, y):
            b = min(max(y / W + 0.5, 1.0), 39.0)
            j = min(int(b), 38)
            t = b - j
            if x >= rows[-1][0]:
                u = 0.0
            else:
                i = 0
                while rows[i + 1][0] <= x:
                    i += 1
                s = (x - rows[i][0]) / (rows[i + 1][0] - rows[i][0])
                p, q = rows[i][1], rows[i + 1][1]
                u = (1 - s) * ((1 - t) * p[j - 1] + t * p[j]) + s * ((1 - t) * q[j - 1] + t * q[j])
            return 0.2 + (0.03 - 0.2) * (1 - math.exp(-u / 6))
        def slip(z):
            sx, sy = z[2] - R * z[5], z[3] + R * z[4]
            return sx, sy, math.hypot(sx, sy)
        def slide(t, z):
            sx, sy, s = slip(z)
            m = mu(z[0], z[1]) * g / max(s, 1e-12)
            fx, fy = -m * sx, -m * sy
            return [z[2], z[3], fx, fy, R / k**2 * fy, -R / k**2 * fx, 0.0]
        def rolls(t, z):
            return slip(z)[2] - 1e-6
        def pins(t, z):
            return z[0] - 18.288
        rolls.terminal = pins.terminal = True
        rolls.direction = -1
        a, w, rho, tau = math.radians(-2.6), 350 * math.pi / 30, math.radians(45), math.radians(12)
        e1, e2 = -w * math.cos(tau) * math.sin(rho), w * math.cos(tau) * math.cos(rho)
        z0 = [0, 21.5 * W, 8 * math.cos(a), 8 * math.sin(a), e1 * math.cos(a) - e2 * math.sin(a), e1 * math.sin(a) + e2 * math.cos(a), w * math.sin(tau)]
        def run(method):
            o = solve_ivp(slide, (0, 6), z0, method=method, rtol=1e-7, atol=1e-9, events=(rolls, pins))
            z = o.y[:, -1]
            return (z[1] + z[3] / z[2] * (18.288 - z[0])) / W + 0.5
        found = {"Version": scipy.__version__}
        for name, method in (("Dop853", "DOP853"), ("Rk45", "RK45")):
            run(method)
            times = []
            for _ in range(5):
                start = time.perf_counter()
                board = run(method)
                times.append((time.perf_counter() - start) * 1000)
            found[name + "Milliseconds"] = statistics.median(times)
            found[name + "Board"] = board
        print(json.dumps(found))
        """;

    /// <summary>One round: the medians of five runs of each method; null when Python or SciPy is not there.</summary>
    public static async Task<Times?> MeasureAsync()
    {
        if (!File.Exists(Python))
        {
            return null;
        }

        using var process = Process.Start(new ProcessStartInfo(Python, ["-c", Script]) { RedirectStandardOutput = true })!;
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return process.ExitCode == 0 ? JsonSerializer.Deserialize<Times>(text) : null;
    }

    /// <summary>What was measured.</summary>
    internal sealed record Times(string Version, double Dop853Milliseconds, double Dop853Board, double Rk45Milliseconds, double Rk45Board);
}
