namespace AimTrainer.Tests;

/// <summary>What only a process of its own shows: exit codes, pipes, signals, two at once.</summary>
public sealed class ProcessTests : IDisposable
{
    private readonly Workplace _work = new();

    public void Dispose() => _work.Dispose();

    [Fact]
    public async Task DrillCheck_DeviceWithoutAnEnd_IsRefusedInBoundedMemory()
    {
        var ran = await _work.ShellAsync("$AIM drill check /dev/zero");

        Assert.Equal(2, ran.Code);
        Assert.Contains("found more than 64 MiB, which no file of this sort needs", ran.Out, StringComparison.Ordinal);
        Assert.Equal("", ran.Error);
    }

    [Fact]
    public async Task ShotsImport_FromAPipe_SaysWhatToDo()
    {
        var ran = await _work.ShellAsync("echo arrowsBoard | cat | $AIM shots import /dev/stdin --drill three-rings --bowler Ann --data d");

        Assert.Equal((2, "/dev/stdin: cannot be read twice, as an import needs to; save it as a file first\n"), (ran.Code, ran.Error));
    }

    [Fact]
    public async Task Output_OnAFullDisk_OneLineAndNoTrace()
    {
        _work.File("s.csv", "arrowsBoard\n10\n");

        var ran = await _work.ShellAsync("$AIM replay --drill three-rings --shots s.csv --json > /dev/full; echo $?; $AIM drill list > /dev/full; echo $?");

        Assert.Equal("1\n1\n", ran.Out);
        var lines = ran.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, lines.Length);
        Assert.All(lines, line => Assert.StartsWith("reading or writing failed: ", line, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Demo_InputIsNoTerminal_EndsByItselfInThePlaceOfARelativeFolder()
    {
        var ran = await _work.ShellAsync("$AIM demo --data here/data </dev/null && ls here/data");

        Assert.True(ran.Code == 0, ran.Error);
        Assert.Contains("aimtrainer.db", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b", ran.Out, StringComparison.Ordinal);
        Assert.Equal("", ran.Error);
    }

    [Fact]
    public async Task Output_PipeIsClosed_NoStackTrace()
    {
        _work.File("s.csv", "arrowsBoard\n" + string.Concat(Enumerable.Repeat("10\n11\n", 20_000)));

        var ran = await _work.ShellAsync("$AIM drill list | head -1; $AIM replay --drill three-rings --shots s.csv --json | head -1; $AIM demo --once --data d | head -1");

        Assert.DoesNotContain("   at ", ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("xception", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_Interrupted_StaysOpenSaysHowToGoOnAndKeepsOthersOut()
    {
        var ran = await _work.ShellAsync(
            """
            mkfifo typed; exec 3<>typed
            env --default-signal=INT $AIM run --drill two-point-line --data "$DATA" <typed >out.txt 2>&1 &
            echo 15/7 >&3
            until grep -q '1 of 15' out.txt; do sleep 0.05; done
            $AIM demo --once --data "$DATA"; echo "second $?"
            kill -INT $!; wait $!; echo "first $?"
            cat out.txt
            """);

        Assert.Contains("is in use by another aimtrainer", ran.Error, StringComparison.Ordinal);
        Assert.Contains("second 1\nfirst 0\n", ran.Out, StringComparison.Ordinal);
        Assert.Contains("The session is left open: go on with aimtrainer run --go-on --station 1", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", ran.Out + ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_FollowedFile_TakesRowsAsTheyCome()
    {
        var ran = await _work.ShellAsync(
            """
            printf 'arrowsBoard\n10.1\n9.2' >grows.csv
            $AIM run --drill ten-shot-spread --follow grows.csv --data "$DATA" </dev/null >out.txt 2>&1 &
            until grep -q ' 1 of 10' out.txt; do sleep 0.05; done
            for i in 1 2 3 4 5 6 7 8 9; do printf '5\n1%s.5' $i >>grows.csv; done
            wait $!; echo "ended $?"; cat out.txt
            """);

        Assert.Contains("ended 0", ran.Out, StringComparison.Ordinal);
        Assert.Contains("|   9.25 0.75 right", ran.Out, StringComparison.Ordinal);
        Assert.Contains("10 of 10", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_FollowedFile_TakesACoachsWordsBesideIt()
    {
        var ran = await _work.ShellAsync(
            """
            mkfifo words; exec 3<>words
            printf 'arrowsBoard\n10.1\n9.25\n' >grows.csv
            $AIM run --drill ten-shot-spread --follow grows.csv --data "$DATA" <words >out.txt 2>&1 &
            until grep -q ' 2 of 10' out.txt; do sleep 0.05; done
            echo 'void 2 foul' >&3; echo 'end lane broke down' >&3
            wait $!; echo "ended $?"; cat out.txt
            """);

        Assert.Contains("ended 0", ran.Out, StringComparison.Ordinal);
        Assert.Contains("shot 2 does not count: foul", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Session over: lane broke down.", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_KilledOnItsWay_GoesOnWithTheSameFile()
    {
        _work.File("long.json", """
            { "format": 1, "id": "long", "name": "Long", "purpose": "A test.", "whoFor": "Tests.", "aboutMinutes": 10,
              "blocks": [ { "name": "all", "kind": "test", "aims": [ { "name": "spot", "board": 10, "feet": 15, "widthBoards": 3 } ],
                "order": { "kind": "serial" }, "until": { "shots": 8000 } } ] }
            """);
        var ran = await _work.ShellAsync(
            """
            { echo arrowsBoard; for i in $(seq 8000); do echo $((i % 20 + 1)).5; done; } >shots.csv
            $AIM shots import shots.csv --drill long.json --data "$DATA" >/dev/null 2>&1 &
            until $AIM sessions list --json --data "$DATA" 2>/dev/null | grep -q '"shots": [1-9]'; do sleep 0.05; done
            kill -9 $!; wait $! 2>/dev/null
            $AIM sessions list --data "$DATA" | grep -c 'open on station 1'
            $AIM shots import shots.csv --drill long.json --data "$DATA" >/dev/null; echo "again $?"
            $AIM sessions list --json --data "$DATA" | grep -e '"shots"' -e '"ended"' -e sessionId | sort | uniq -c | wc -l
            $AIM sessions list --json --data "$DATA" | grep -e '"shots": 8000' -e '"ended": true'
            """);

        Assert.Contains("1\nagain 0\n3\n", ran.Out, StringComparison.Ordinal);
        Assert.Contains("\"shots\": 8000", ran.Out, StringComparison.Ordinal);
        Assert.Contains("\"ended\": true", ran.Out, StringComparison.Ordinal);
    }
}
