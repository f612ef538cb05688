using System.Text.Json;
using CsCheck;

namespace AimTrainer.Domain.Tests;

public class StabilityTests
{
    [Fact]
    public void Apply_RecordedSavedLoadedAppliedAgain_GivesTheSameBytes()
    {
        RandomSession.Any.Sample(
            sample =>
            {
                var (_, log) = RandomSession.Run(RandomSession.SetupOf(RandomSession.Drills[sample.Drill]), RandomSession.Drills[sample.Drill], sample.Acts);
                var json = Json(log);
                var setup = JsonSerializer.Deserialize<SessionSetup>(Json(RandomSession.SetupOf(RandomSession.Drills[sample.Drill])), DomainJson.Options)!;
                var state = SessionCore.Open(setup, RandomSession.Drills[sample.Drill]).State!;
                var again = new List<LogEntry>();
                foreach (var entry in JsonSerializer.Deserialize<List<LogEntry>>(json, DomainJson.Options)!)
                {
                    var step = SessionCore.Apply(state, entry.Input);
                    state = step.State;
                    again.Add(entry with { Events = step.Events });
                }

                Assert.Equal(json, Json(again));
            },
            iter: 300);
    }

    [Fact]
    public void Apply_SameStateTwice_GivesTheSameEventsAndLeavesTheStateAlone()
    {
        RandomSession.Any.Sample(
            sample =>
            {
                var (state, _) = RandomSession.Run(RandomSession.SetupOf(RandomSession.Drills[sample.Drill]), RandomSession.Drills[sample.Drill], sample.Acts);
                var input = new SessionInput.ShotThrown(Play.Start.AddHours(1), SampleShot.Of([(15, 10), (40, 8)]));
                var first = SessionCore.Apply(state, input);
                SessionCore.Apply(first.State, new SessionInput.VoidShot(Play.Start.AddHours(2), 1, "foul"));
                var second = SessionCore.Apply(state, input);

                Assert.Equal(first.Refusal, second.Refusal);
                Assert.Equal(first.Events, second.Events);
            },
            iter: 200);
    }

    [Fact]
    public void Apply_AnySession_WhatIsShownIsWhatIsGraded()
    {
        RandomSession.Any.Sample(
            sample =>
            {
                var (_, log) = RandomSession.Run(RandomSession.SetupOf(RandomSession.Drills[sample.Drill]), RandomSession.Drills[sample.Drill], sample.Acts);
                SessionEvent.AimShown? shown = null;
                foreach (var happened in log.SelectMany(entry => entry.Events))
                {
                    if (happened is SessionEvent.AimShown next)
                    {
                        shown = next;
                    }
                    else if (happened is SessionEvent.ShotGraded { Shot: var shot })
                    {
                        Assert.Equal(shown!.Aim.Targets, shot.Targets.Select(result => new NamedTarget(result.Name, result.Target)));
                        Assert.Equal((shown.Aim.Name, shown.Number, shown.Place), (shot.Aim, shot.Number, shot.Place));
                    }
                }
            },
            iter: 300);
    }

    [Fact]
    public void Apply_AnySession_NumbersHaveNoGapsAndTargetsStayWithinTheirLimits()
    {
        RandomSession.Any.Sample(
            sample =>
            {
                var drill = RandomSession.Drills[sample.Drill];
                var sizings = drill.Blocks.SelectMany(block => block.Aims).SelectMany(aim => aim.Targets).GroupBy(plan => plan.Name)
                    .ToDictionary(plans => plans.Key, plans => plans.Select(plan => plan.Sizing).ToList());
                var (state, log) = RandomSession.Run(RandomSession.SetupOf(drill), drill, sample.Acts);
                var events = log.SelectMany(entry => entry.Events).ToList();

                Assert.Equal(Enumerable.Range(1, state.LastNumber), events.OfType<SessionEvent.ShotGraded>().Select(graded => graded.Shot.Number));
                foreach (var target in events.OfType<SessionEvent.AimShown>().SelectMany(shown => shown.Aim.Targets))
                {
                    Assert.Contains(sizings[target.Name], rule => target.Target.Width >= rule.Narrowest && target.Target.Width <= rule.Widest);
                    Assert.InRange(target.Target.Centre.Boards, 0.5, 39.5);
                }
            },
            iter: 300);
    }

    [Fact]
    public void Apply_AnySession_EveryBlockThatBeganEndsOnceAndTheRunsAreInOrder()
    {
        RandomSession.Any.Sample(
            sample =>
            {
                var (state, log) = RandomSession.Run(RandomSession.SetupOf(RandomSession.Drills[sample.Drill]), RandomSession.Drills[sample.Drill], sample.Acts);
                var events = log.SelectMany(entry => entry.Events).ToList();
                var began = events.OfType<SessionEvent.BlockBegan>().Select(one => one.Run).ToList();
                var ended = events.OfType<SessionEvent.BlockEnded>().Select(one => one.Run).ToList();

                Assert.Equal(Enumerable.Range(0, began.Count), began);
                Assert.Equal(state.Phase == SessionPhase.Ended ? began : began.SkipLast(1), ended);
            },
            iter: 300);
    }

    [Fact]
    public void Apply_VoidsAndCorrections_CountsAreThoseOfTheShotsThatStand()
    {
        RandomSession.Any.Sample(
            sample =>
            {
                var (state, _) = RandomSession.Run(RandomSession.SetupOf(RandomSession.Drills[sample.Drill]), RandomSession.Drills[sample.Drill], sample.Acts);

                Assert.Equal(state.Run is null ? 0 : state.ShotsOfRun().Count(shot => shot.VoidReason is null), state.Throws);
            },
            iter: 300);
    }

    [Fact]
    public void Apply_LeftHandersSession_SameBoardsSameGrades()
    {
        // Boards are counted from the ball hand, so a left-hander's session on the mirrored lane is the same session.
        RandomSession.Any.Sample(
            sample =>
            {
                var (_, ofRight) = RandomSession.Run(RandomSession.SetupOf(RandomSession.Drills[sample.Drill]), RandomSession.Drills[sample.Drill], sample.Acts);
                var (_, ofLeft) = RandomSession.Run(Left(RandomSession.SetupOf(RandomSession.Drills[sample.Drill])), RandomSession.Drills[sample.Drill], sample.Acts);

                Assert.Equal(Json(ofRight), Json(ofLeft));
            },
            iter: 200);
    }

    [Fact]
    public void Apply_ForShotsAlone_GivesTheSameEvents()
    {
        RandomSession.Any.Sample(
            sample =>
            {
                var acts = sample.Acts.Select(act => (act.What % 17, act.A, act.B)).ToArray();
                var opened = SessionCore.Open(RandomSession.SetupOf(RandomSession.Drills[sample.Drill]), RandomSession.Drills[sample.Drill]).State!;
                var (keeps, all) = RandomSession.Run(opened, acts);
                var (forgets, same) = RandomSession.Run(opened.ForShotsAlone(), acts);

                Assert.Equal(Json(all), Json(same));
                Assert.True(forgets.ShotsOfRun().Count() <= Math.Min(4, keeps.ShotsOfRun().Count()));
            },
            iter: 200);
    }

    private static SessionSetup Left(SessionSetup setup) => setup with { Hand = Hand.Left, Lane = SampleLane.Mirrored(SampleLane.Usual) };

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, DomainJson.Options);
}
