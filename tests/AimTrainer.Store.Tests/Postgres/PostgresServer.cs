using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using AimTrainer.Store.Postgres;
using Npgsql;

namespace AimTrainer.Store.Tests;

/// <summary>
/// A PostgreSQL server of our own: its data in a temporary folder, its port on this machine only. It ends with this process, however
/// that ends.
/// </summary>
/// <remarks>Debian's package <c>postgresql</c> brings the programs. The server refuses to run as root, so then it runs as its own user.</remarks>
public sealed class PostgresServer : IDisposable
{
    public const string User = "tester";
    public const string Password = "not-a-secret-2718";

    private readonly string _folder = Directory.CreateTempSubdirectory("aimtrainer-postgres-").FullName;
    private readonly HashSet<string> _databases = [];
    private Process? _server;

    public PostgresServer()
    {
        Programs = FindPrograms();
        if (IsRoot)
        {
            Do("chown", "postgres", _folder);
        }

        var passwordFile = Path.Combine(_folder, "password");
        File.WriteAllText(passwordFile, Password);
        AsServer(
            Path.Combine(Programs, "initdb"), "-D", Data, "-U", User, "--auth=scram-sha-256", $"--pwfile={passwordFile}", "--locale=C.UTF-8", "-E", "UTF8",
            "--no-instructions");
        File.Delete(passwordFile);
        Port = FreePort();
        Start();
    }

    /// <summary>Where initdb and postgres are.</summary>
    public string Programs { get; }

    public int Port { get; }

    private static bool IsRoot => Environment.IsPrivilegedProcess;

    private string Data => Path.Combine(_folder, "data");

    /// <summary>A database, made when it is missing.</summary>
    public PostgresPlace Place(string database, int? port = null)
    {
        if (_databases.Add(database))
        {
            Run("postgres", $"CREATE DATABASE {database} STRATEGY file_copy");
        }

        var text = Text(database, port);
        return PostgresPlace.Read(text, out var problem) ?? throw new InvalidOperationException(problem);
    }

    /// <summary>The text that names a database.</summary>
    public string Text(string database, int? port = null) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"postgres:Host=127.0.0.1;Port={port ?? Port};Database={database};Username={User};Password={Password}");

    /// <summary>Runs SQL past the program.</summary>
    public void Run(string database, string sql)
    {
        using var connection = Connect(database);
        using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 600 };
        command.ExecuteNonQuery();
    }

    /// <summary>The first value of the answer to SQL.</summary>
    public T Ask<T>(string database, string sql)
    {
        using var connection = Connect(database);
        using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 600 };
        return (T)command.ExecuteScalar()!;
    }

    /// <summary>A connection past the program; the caller closes it.</summary>
    public NpgsqlConnection Connect(string database)
    {
        var connection = new NpgsqlConnection(Text(database)[PostgresPlace.Prefix.Length..] + ";Pooling=false");
        connection.Open();
        return connection;
    }

    /// <summary>Starts the server and waits until it answers.</summary>
    public void Start()
    {
        // The shell ends the server when our end of its input closes.
        var script = $"\"{Path.Combine(Programs, "postgres")}\" -D \"{Data}\" -p {Port} -c listen_addresses=127.0.0.1 -c unix_socket_directories= "
            + "-c shared_buffers=128MB -c max_connections=200 -c log_min_messages=fatal & server=$!; cat >/dev/null; kill -INT $server; wait $server";
        _server = Process.Start(AsServerStart("/bin/sh", ["-c", script], redirectInput: true))!;
        for (var i = 0; ; i++)
        {
            try
            {
                Connect("postgres").Dispose();
                return;
            }
            catch (NpgsqlException) when (i < 600)
            {
                Task.Delay(50).GetAwaiter().GetResult();
            }
        }
    }

    /// <summary>Stops the server; what it acknowledged is on the disk.</summary>
    public void Stop()
    {
        _server!.StandardInput.Close();
        _server.WaitForExit();
        _server.Dispose();
        _server = null;
    }

    /// <summary>Ends it as a power cut would: nothing is written any more, and the next start recovers from the log.</summary>
    public void Kill()
    {
        var lines = File.ReadAllLines(Path.Combine(Data, "postmaster.pid"));
        Do("kill", "-QUIT", lines[0]);
        Stop();
    }

    public void Dispose()
    {
        if (_server is not null)
        {
            Stop();
        }

        Directory.Delete(_folder, recursive: true);
    }

    private static string FindPrograms()
    {
        const string Debian = "/usr/lib/postgresql";
        return (Directory.Exists(Debian) ? Directory.EnumerateDirectories(Debian) : [])
            .OrderByDescending(folder => int.TryParse(Path.GetFileName(folder), out var version) ? version : 0)
            .Select(folder => Path.Combine(folder, "bin")).FirstOrDefault(bin => File.Exists(Path.Combine(bin, "initdb")))
            ?? throw new InvalidOperationException("no PostgreSQL server here: apt-get install postgresql");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static ProcessStartInfo AsServerStart(string program, IEnumerable<string> arguments, bool redirectInput = false)
    {
        string[] all = IsRoot ? ["-u", "postgres", "--", program, .. arguments] : [.. arguments];
        return new ProcessStartInfo(IsRoot ? "runuser" : program, all)
        {
            RedirectStandardInput = redirectInput,
            RedirectStandardOutput = !redirectInput,
            RedirectStandardError = !redirectInput,
            WorkingDirectory = "/",
        };
    }

    private static void AsServer(string program, params string[] arguments) => Finish(AsServerStart(program, arguments));

    private static void Do(string program, params string[] arguments) =>
        Finish(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true });

    private static void Finish(ProcessStartInfo start)
    {
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{start.FileName}: {output.Result} {error}");
        }
    }
}
