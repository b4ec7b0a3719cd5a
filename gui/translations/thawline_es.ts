<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es_ES">
<context>
    <name></name>
    <message>
        <source>Close</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pause, go on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Backspace</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>discard the last trial</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Escape</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stop and keep what there is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>continue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>0 to 9, X for ten</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>H, C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>begin at home, read in a clinic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>O, M</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the other side, another movement</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>measure the last one again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>R</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>try again after trouble</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl 1 to 4</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure, Progress, Clips, Set-up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl + and Ctrl -</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>text larger, smaller</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Raising the other hand pauses as well.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is not a medical device.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>it cannot be written to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Thawline is already open. Look for its window.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something went wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>details</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy the details</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something went wrong that should not.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was captured and kept before is safe. You can go on; if it happens again, close the window and open it anew.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure</source>
        <extracomment>How long closing may take altogether, seconds: first the engine, then what waits to be saved.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Progress</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set-up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a &amp;clip...</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a &amp;folder of clips...</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Report for a clinic visit...</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Go to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the &amp;system</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Text &amp;larger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Text s&amp;maller</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Text as it &amp;was</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Cues</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Tones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Speech</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;What this is, and what it is not</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;About Thawline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>La&amp;nguage</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The language changes when Thawline is opened the next time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nobody has been measured yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write a report</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{file} is written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> (demo data)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How does the shoulder feel today?</source>
        <extracomment>Pain</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pain now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pain last night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>worst pain since yesterday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Continue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Now, at rest</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Last night</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The worst since yesterday</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>0 is no pain, 10 the worst imaginable. Leave out what you do not want to say.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a clip</source>
        <extracomment>Steps of the slider in a second.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a folder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>clips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>movement</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read this clip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>share read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a clip or a folder of clips.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moment of the clip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep in the record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open clips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clips ({endings})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a folder of clips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There are no clips in this folder.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Opening {clip}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No trial is accepted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the clip {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>practice, not counted</source>
        <extracomment>Phases in which the drawn position helps more than a number. Places in the stack at the right.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>being settled</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>settled: {range}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Discard the last</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop and keep</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Opening the camera.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>try</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a guide; {words}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Me</source>
        <extracomment>Whether a session is under way, so that the rest of the window steps back. Something to be told, in words. A session ended; the history has something new.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The last one again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next, {here} of {of}: {task}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{movement}. {turned}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You will not see the screen: listen for the voice and the tones.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One practice first, then it counts. Raise the other hand to pause.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Raise the other hand to pause.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much did it hurt?</source>
        <extracomment>(pain or None, StoppedBy or None)</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pain from 0 to 10</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>what stopped it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>10: the worst imaginable</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>0: no pain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What stopped the movement?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was captured.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>how it was done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every session</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the curves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>beneath: pain 0 to 10</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>▲ stretches done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>dashed: no reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before measuring, {here} of {of}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on gently</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop for today</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ask again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave measuring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sessions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{day}
{count} readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trial {number}, at {time} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Noted: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> (cut short; what was captured is here)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pain was not stated.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pain {pain} of 10</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stopped by: {what}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{conduct}. View: {view}. Against: {reference}. Model: {passes}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>trunk axis</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>plumb line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look for cameras again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the picture as a mirror does</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Check left and right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left and right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Raise your right hand.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stand where the camera sees you from head to hips.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is a good place. You can measure here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face the camera and raise your right hand.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: {plainly}</source>
        <extracomment>tuple[Task, ...] Task A new pseudonym.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Both or neither</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the stiff shoulder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A sore day: two trials, no reach behind the back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin, step by step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>H</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the movement to read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the side to read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>C</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>how the arm moves</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm moves {help}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>who is measured</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Somebody else</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>At home</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which shoulder is stiff?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In a clinic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measured:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readings done differently, sitting or with help, never share a curve.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A name of your choice; it need not be a real one:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A note, if you like</source>
        <extracomment>A note of the person&apos;s own.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The other side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>O</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another movement</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>M</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Finish</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measured today. Everything is kept.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was measured.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>pain {pain} of 10</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stopped by {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pain was not stated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trial {number}, from {time} s</source>
        <extracomment>tuple[bool, ...], one for each trial. A trial to look at.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>I have read this</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None of these fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One of these fits</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A clinician agrees that I measure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What this is, and what it is not</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In an emergency, leave this and call the emergency number.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Thawline watches an arm through the camera and estimates how far the shoulder moves. You can follow that over weeks and take it to an appointment.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is not a medical device. It does not find out what is wrong with a shoulder and gives no advice on treatment.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its numbers can be off by several degrees. Each says how sure it is, and often the honest answer is that it cannot tell.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is nothing to reach here. Stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pictures stay in this computer and are dropped at once. No video is kept.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Does one of these fit you now?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pain or tightness in the chest, the jaw or the left arm; short of breath or sweating. Whichever shoulder hurts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An injury after which the shoulder looks out of shape or may be broken.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shoulder has been locked since a seizure or an electric shock.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The joint is hot, red and swollen, or you have a fever and feel ill.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm has suddenly become very weak or numb, or you cannot use it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm is cold, pale, blue or suddenly swollen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Short of breath after an operation, or after lying still for long.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pain at the tip of the shoulder with pain in the belly, or while maybe pregnant.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Both shoulders stiff, with a new headache, a tender scalp or worse sight.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Then do not measure. Get help at once.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Or one of these?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You have or had cancer; a new lump or swollen glands; weight lost unintended.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pain at night that never lets up.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Since an injury you cannot lift the arm.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Weakness, numbness or thinning of muscles that grows from week to week.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is getting worse fast, or several joints are swollen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Then see a clinician within days, before you measure.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>And one of these?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An operation, a fracture, a dislocation or another injury of the shoulder within the last twelve weeks.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A surgeon&apos;s limits for the arm still hold.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An injection lately, and you were told to rest.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A pacemaker or its wires put in lately; an operation on breast or armpit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moving the neck brings on the pain, or it tingles below the elbow.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Then ask the clinician who treats you first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the arm rest.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>That hurt more than measuring should.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was measured is kept. Another day is as good as today.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Get help now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Call the emergency number: 112 in Europe, 911 in North America, 999 in the United Kingdom, or the one where you are.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Do not wait to see whether it passes. If you are unsure, call.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Please do not measure today. What was measured before is kept.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Please see a clinician within days.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Most often there is a harmless reason, but somebody should look at it first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>If it gets worse suddenly, call the emergency number.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Please ask the clinician who treats you first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say what you would do here: raise and turn the arm by yourself, slowly, and stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left side to the camera, arm hanging.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face the camera, then turn halfway to your right. Forearm straight ahead.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the camera. Left hand behind you.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right side to the camera, arm hanging.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face the camera, then turn halfway to your left. Forearm straight ahead.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the camera. Right hand behind you.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face the camera, arms hanging, thumbs turned out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slowly forwards and up. Stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slowly backwards. Stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slowly sideways and up. Stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Forearm slowly outwards. Stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slide the thumb slowly up. Stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paused. Let the arm rest.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hold it there, gently.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the arm come back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the arm rest. The reading is being settled.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One moment, please.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done. Let the arm rest.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not counted: {why}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rest. Begin again when you are ready.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step back a little.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Come a little closer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step a little to your left.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Step a little to your right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Raise the screen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lower the screen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The camera is tilted. Set it level.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More light, please.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The light is behind you. Turn it round or close a blind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nobody seen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>seen well</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>somebody else in view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>two people in view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lost from view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>damaged pictures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too few pictures a second</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the picture is turned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn as the drawing shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn round, the other arm is nearer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>out of the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm or hips hidden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm not seen clearly</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left and right mixed up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the elbow was bent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the elbow was not at 90°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the elbow left the side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the trunk leaned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the trunk turned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the arm left its plane</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the shoulder rose</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>face the camera first, then turn</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no rest before it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no movement seen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no still hold</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the hold was unsteady</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not seen clearly enough</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>that value cannot be</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too few trials</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the trials differ</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The camera is not allowed. Allow it in the privacy settings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another program uses the camera. Close it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No such camera is connected. Plug it in or choose another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The camera was unplugged. Plug it in again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The picture is black. Open the camera&apos;s cover or add light.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The camera is slow. Add light, or unplug other cameras.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The picture stands still. Unplug the camera and plug it in.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This clip cannot be played. Choose another.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The clip has ended.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pose model is missing. Get it with: thawline model</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One moment: the pose part is starting again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pose part does not start. Close the window and try again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something does not work. Try again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>That was all. Thank you.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Distance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Height and level</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>○  {name}: not seen yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>✓  {name}: good</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>✓  Your right hand was seen as right. Left and right are kept as they are.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>▶  The camera delivers a mirror image. That is noted and put right from now on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too early to say</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no clear change</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>likely gaining</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>gaining</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>likely losing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>losing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stalled</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{side}: {verdict}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>. It takes about four weeks, or eight sessions.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{change} a month</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{change} since the first weeks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{value} ({range})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{low} to {high}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Both shoulders moved together, so the set-up may have changed and no trend is told.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{side}, range for: {tasks}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no number</source>
        <extracomment>Digits are never lower than this share of the window&apos;s height.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>value over time</source>
        <extracomment>A moment, seconds.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>degrees</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>share</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>seconds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a made-up example of a curve</source>
        <extracomment>Middle and half-width of the drawn example, in per cent of its height. Made up.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Here your readings will stand side by side.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Each session adds a band. The band is where the true value probably lies; the mark in it is the estimate. One reading can be off by several degrees, so a single session says little.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A made-up example.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In about four weeks, or after eight sessions, it becomes possible to say whether the shoulder moves more than before. Two or three sessions a week are enough.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>readings over time</source>
        <extracomment>Both shoulders of one session stand a little apart. Where stretches stand under the ratings of pain.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>per cent of the way up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>hold {percent} % done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drawing: {movement}, {side} arm</source>
        <extracomment>The figure reaches so far from the hips, in body heights: up, down, to either side.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drawing from above</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>face the screen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>back to the screen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>side to the screen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>half turned</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done just now:</source>
        <extracomment>The stretch that was done.</extracomment>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>to come</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No picture yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>camera picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>head about here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>hips above this line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>An estimate, not a diagnosis. Stop before it becomes painful.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm forwards and up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm backwards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arm sideways and up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>forearm outwards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>thumb up the back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{movement}, {side} arm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stiffness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Weakness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something else</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>by itself</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>helped by the other hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>helped by a stick</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>helped by a pulley</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>helped by a person</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>standing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sitting</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{posture}, the arm moves {help}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{band}, most likely {region}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No reading. </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{band}, {low} to {high}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No reading.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not counted. </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not counted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flexion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Extension</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Abduction</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>External rotation at the side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hand behind back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nobody was in view. Stand where the camera sees you from head to hips.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another person was measured for a while. Ask others to step out of the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two people were in view. Ask others to step out of the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The person was lost during the movement. Stay in the picture and add some light.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Part of the recording is damaged. Record it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Too few pictures a second. Add light or choose a smaller picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The picture seems to be turned: the head is not above the hips. Turn the picture upright.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The camera sees the body from the wrong direction for this movement. Stand as the drawing shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm is on the far side of the body. Turn round so that it is next to the camera.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shoulder, hand or hips left the picture. Step back or move the camera.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shoulder, arm or hips were hidden. Move what is in the way; wear something close-fitting.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm seemed to change its length, so its points cannot be trusted. Wear something close-fitting and add light.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left and right arm could not be told apart. Record it again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The elbow was bent. Keep it as straight as is comfortable.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The elbow was not at a right angle. Keep it bent to 90 degrees.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The elbow left the side. Keep it on the rolled towel.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The trunk leaned. Stay upright and let only the arm move.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The trunk turned. Keep the chest still.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm moved out of its plane. Move it as the drawing shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shoulder rose with the arm. This is common; it is only noted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No facing stance was seen at the start. Face the camera for a second, then turn.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The arm did not start in its neutral position. Begin with a second of rest.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No movement of this kind was seen.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No still hold of a second was seen. Hold the end position a little longer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The hold was unsteady.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Repeated looks at the same pictures disagree. Try closer-fitting clothes, more light or a plainer background.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The value found is not possible for a shoulder.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fewer than three trials were scored.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The trials differ from each other more than usual.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>front</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>oblique</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>upper thoracic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mid thoracic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lower thoracic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>upper lumbar</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lower lumbar</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sacrum</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>buttock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>thigh</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reach a shelf at shoulder height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reach a shelf above the head</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reach up high, arm nearly upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lift the arm sideways to shoulder height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reach up sideways, as to a high hook</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn the forearm a third of the way outwards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn the forearm halfway outwards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn the forearm outwards as most everyday tasks ask for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bring the elbow back far enough for a back pocket</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reach a back pocket</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reach the waistband behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tuck a shirt in behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>fasten a strap behind the back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>reach between the shoulder blades</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table slide forwards</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table slide sideways</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pendulum</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wall walk</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>External rotation at a fixed handle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Internal rotation at a fixed handle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cross-body stretch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Towel stretch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shoulder is easily upset today, so two trials of each movement are enough and the reach behind the back is left out. Stop where pain begins.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
